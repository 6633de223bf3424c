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
 * they look like words (`looksLikeWords`). What speaks to developers (thrown TypeErrors and RangeErrors, `expectation(…)`, the log), is only compared
 * with, names files, selects or styles is passed over.
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
    if (isForDevelopers(node) || isName(node)) return;
    if (isComparison(node)) {
      for (const side of [node.left, node.right]) if ((side as Node).type !== 'Literal') walk(side);
      return;
    }
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
  /^(--|@page|@font-face|<)/,
  /^\[[a-z-]+\]$|, \[role=|^button, a, /,
  /^&[a-z]+;$|^\.[a-z]+$|\p{Cc}/u,
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
  // Lengths and sizes, sides of a printed page, lists of faces, points of the compass, what a browser may load, media types.
  /^[\d.]+(px|em|kb|mb)$/,
  /^(size|margin): /,
  /var\(--|, (sans-)?serif$/,
  /^[NESW]{1,3}( [NESW]{1,3})+$/,
  /^[a-z]+-(src|uri|action|ancestors) /,
  /; charset=|^inline; filename=/,
  /^(BEGIN|END):V/,
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

/** Errors of the program, what checks it, and the server's log. */
function isForDevelopers(node: Node): boolean {
  if (node.type !== 'CallExpression' && node.type !== 'NewExpression') return false;
  const callee = node.callee as Node;
  if (callee.type === 'MemberExpression') {
    const object = callee.object as Node;
    return ((object.name ?? object.property?.name) as string | undefined) === 'log';
  }
  return /^(expectation|TypeError|RangeError|require[A-Z]\w*)$/.test((callee.name ?? '') as string);
}

/** A name by which the program finds something again: a list's key, an error's name. */
function isName(node: Node): boolean {
  if (node.type === 'Property') return ['key', 'id'].includes((node.key as Node).name as string);
  return (
    node.type === 'AssignmentExpression' &&
    (node.left as Node).type === 'MemberExpression' &&
    (node.left.property as Node).name === 'name'
  );
}

/** What is compared with something is not said by that. */
function isComparison(node: Node): boolean {
  return node.type === 'BinaryExpression' && /^[!=]==?$/.test(node.operator as string);
}
