import type { ReactNode } from 'react';
import type { Interpreter } from './interpreter.ts';
import { interpreterInUse } from './speaker.ts';
import { spokenChildren } from './spoken-children.ts';

/** Attributes that a reader sees or hears. */
const SPOKEN_ATTRIBUTES = [
  'alt',
  'aria-description',
  'aria-label',
  'aria-roledescription',
  'aria-valuetext',
  'placeholder',
  'title',
] as const;

type Props = Readonly<Record<string, unknown>> & { readonly children?: ReactNode };

/**
 * The properties of an element with its words interpreted. Those of components too: a library's draws its element past this way. What is interpreted twice stays as it is
 * the second time. What a grower wrote (names, notes) stands in elements that say `translate="no"`, as HTML has it, and stays as it is.
 */
export function spokenProps<P>(props: P): P {
  const say = interpreterInUse();
  return say === null ? props : (withWords(props as Props, say) as P);
}

function withWords(props: Props, say: Interpreter): Props {
  if (props.translate === 'no') return props;
  const spoken: Record<string, unknown> = { ...props };
  if (props.children !== undefined) spoken.children = spokenChildren(props.children, say);
  for (const name of SPOKEN_ATTRIBUTES) {
    const value = props[name];
    if (typeof value === 'string') spoken[name] = say(value);
  }
  return spoken;
}
