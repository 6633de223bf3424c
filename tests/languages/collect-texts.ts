import { readFileSync } from 'node:fs';
import { parseSync } from 'vite';

/** A text of the app as its source has it, places for values numbered in order: "Sent {0} of {1}". */
export interface FoundText {
  readonly text: string;
  /** File it stands in, from the project's root. */
  readonly file: string;
}

interface Node {
  readonly type: string;
  // biome-ignore lint/suspicious/noExplicitAny: a syntax tree's fields depend on the node's type.
  readonly [field: string]: any;
}

/**
 * Every text in a source that may reach a reader.
 *
 * @param file from the project's root; TypeScript, with or without elements
 * @param path where it lies
 *
 * How: children of one element are one text, an element among them a place for a value; strings and templates are texts when
 * they look like words (`looksLikeWords`). What speaks to developers (thrown TypeErrors and RangeErrors, `expectation(…)`), names files,
 * selects or styles is passed over.
 */
export function collectTexts(file: string, path: string): FoundText[] {
  const { program } = parseSync(file, readFileSync(path, 'utf8'));
  const texts: FoundText[] = [];
  const add = (text: string) => {
    const plain = text.replaceAll(/\s+/g, ' ').trim();
    if (looksLikeWords(plain)) texts.push({ text: plain, file });
  };
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) {
      for (const child of value) walk(child);
      return;
    }
    if (typeof value !== 'object' || value === null || !('type' in value)) return;
    const node = value as Node;
    if (isForDevelopers(node)) return;
    switch (node.type) {
      case 'JSXElement':
      case 'JSXFragment':
        for (const text of childTexts(node.children as Node[])) add(text);
        break;
      case 'JSXAttribute':
        if ((node.value as Node | null)?.type === 'Literal') {
          const name = (node.name as Node).name as string;
          if (!NOT_SPOKEN_ATTRIBUTES.test(name)) add(String((node.value as Node).value));
          return;
        }
        break;
      case 'Literal':
        if (typeof node.value === 'string') add(node.value);
        return;
      case 'TemplateLiteral':
        // A template without a space names something: a file, an element, a key.
        if (/\s/.test(templateText(node))) add(templateText(node));
        break;
      case 'TSLiteralType':
      case 'ImportDeclaration':
      case 'TSTypeAliasDeclaration':
      case 'TSInterfaceDeclaration':
        return;
    }
    for (const [field, child] of Object.entries(node)) if (field !== 'key' || node.computed) walk(child);
  };
  walk(program);
  return texts;
}

const NOT_SPOKEN_ATTRIBUTES =
  /^(class|className|id|htmlFor|type|role|name|rel|href|d|transform|viewBox|fill|stroke.*|points|key|inputMode|autoComplete|accept|aria-live|translate|[a-z]+Id)$/;

/**
 * Whether a string is meant to be read: a sentence, a phrase, or a name with a capital. A single lower-case word may be a value of the program or a word
 * put into a sentence; nothing in a source tells which, so a catalogue may hold it and need not.
 */
function looksLikeWords(text: string): boolean {
  if (!/\p{L}{2,}/u.test(text.replaceAll(/\{\d+\}/g, ' '))) return false;
  if (NOT_WORDS.some((form) => form.test(text))) return false;
  return /^\P{Ll}/u.test(text) || /\s/.test(text);
}

const NOT_WORDS = [
  // Addresses, files, selectors, header names, media types, elements.
  /^\S*[/#_@=<>][^\s]*$/,
  /^[\w-]+\.[a-z]{2,5}$/,
  /^(--|@page|<)/,
  /^[A-Z]\w*-[\w-]+$/,
  /^[a-z]+:[a-z-]+$/,
  // Constants, one capitalised identifier in camel case, drawing commands, the database's language, style rules.
  /^[A-Z][A-Z0-9_]{2,}$/,
  /^[A-Z][a-z0-9]+[A-Z]\w*$/,
  /^(?:[MmLlHhVvCcSsQqTtAaZz]|[\s\d.,-]|\{\d+\})+$/,
  /^(SELECT|INSERT|PRAGMA|CREATE) /,
  /^[a-z-]+\([^)]*\)/,
  /^(Content|Cache|Cross|Referrer)-/,
  /^[\w-]+: [^.]*;$/,
  /^\(?(min|max|prefers)-/,
  /^Key[A-Z]$|^Arrow|^Page(Up|Down)$/,
] as const;

/** Strings of an element's children with its elements and values as places: one text, or one a stretch when nothing is said between. */
function childTexts(children: readonly Node[]): string[] {
  let text = '';
  let place = 0;
  for (const child of children) {
    if (child.type === 'JSXText') text += jsxText(String(child.value));
    else if (child.type === 'JSXExpressionContainer') {
      const expression = child.expression as Node;
      if (expression.type === 'Literal') text += String(expression.value);
      else if (expression.type === 'TemplateLiteral') text += templateText(expression, place);
      else if (expression.type !== 'JSXEmptyExpression') text += `{${place}}`;
      place = (text.match(/\{\d+\}/g) ?? []).length;
    } else text += `{${place++}}`;
  }
  return [text];
}

/** Text between elements as JSX reads it: line breaks and what surrounds them are no spaces, within a line they are. */
function jsxText(value: string): string {
  const lines = value.split(/\r?\n/);
  return lines
    .map((line, k) => {
      let text = line;
      if (k > 0) text = text.replace(/^\s+/, '');
      if (k < lines.length - 1) text = text.replace(/\s+$/, '');
      return text;
    })
    .filter((line) => line !== '')
    .join(' ');
}

function templateText(node: Node, first = 0): string {
  const quasis = node.quasis as { value: { cooked: string } }[];
  return quasis.map(({ value }, k) => (k === 0 ? '' : `{${first + k - 1}}`) + value.cooked).join('');
}

function isForDevelopers(node: Node): boolean {
  if (node.type === 'CallExpression' || node.type === 'NewExpression') {
    const name = ((node.callee as Node).name ?? '') as string;
    return name === 'expectation' || name === 'TypeError' || name === 'RangeError';
  }
  return false;
}
