import { createStore } from '../parts/store.ts';

/** Whether the server has turned this device away: it is not let in, or no longer. */
export const isOutside = createStore(false);
