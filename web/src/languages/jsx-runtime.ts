import { Fragment, jsx as plainJsx, jsxs as plainJsxs } from 'react/jsx-runtime';
import { spokenProps } from './spoken-props.ts';

/**
 * The way by which all elements are made, so that no text misses the reader's language: React's own, with the words of an element
 * interpreted first. Vite puts it before React's (`vite.config.ts`).
 */
export const jsx: typeof plainJsx = (type, props, key) => plainJsx(type, spokenProps(props), key);
export const jsxs: typeof plainJsxs = (type, props, key) => plainJsxs(type, spokenProps(props), key);
export { Fragment };
