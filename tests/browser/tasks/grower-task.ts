import type { Page } from 'playwright-core';

/** What a task is done with: the page, the app's address, and the camera for its steps. */
export interface TaskDesk {
  readonly page: Page;
  readonly appUrl: string;
  /** Shows that a step is done, under its name. */
  shot(step: string): Promise<void>;
}

/** One thing that a grower comes to do, from the first look to its end. */
export interface GrowerTask {
  readonly key: string;
  readonly title: string;
  /** What lies on the bench when it begins. */
  readonly bench: 'sample plants' | 'nothing';
  run(desk: TaskDesk): Promise<void>;
}
