// Runs in a worker thread: core's pixel work takes a second and its WebAssembly needs its own heap.
export { measureFile as default } from './measure-file.ts';
