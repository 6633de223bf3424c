import { Fragment, jsxDEV as plainJsx } from 'react/jsx-dev-runtime';
import { spokenProps } from './spoken-props.ts';

/** The same way while developing. */
export const jsxDEV: typeof plainJsx = (type, props, ...rest) => plainJsx(type, spokenProps(props), ...rest);
export { Fragment };
