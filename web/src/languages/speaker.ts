import type { Interpreter } from './interpreter.ts';

/** Gives a text of the app in the reader's language and units; English and metric until `speak` says otherwise. */
let interpret: Interpreter | null = null;
let locale: string | undefined;

/** Sets how every text is given from now on; before the first screen is drawn, as what is drawn stays. */
export function speak(next: Interpreter | null, nextLocale?: string): void {
  interpret = next;
  locale = nextLocale;
}

/** The manner of days and numbers, BCP 47; undefined for the device's own. */
export function localeInUse(): string | undefined {
  return locale;
}

/** The interpreter in use; `null` where texts are shown as written. */
export function interpreterInUse(): Interpreter | null {
  return interpret;
}

/** A text as the reader shall see it. For texts that reach the page by another way than an element: a chart, a canvas, the window's title. */
export function said(text: string): string {
  return interpret === null ? text : interpret(text);
}
