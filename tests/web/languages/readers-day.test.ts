import { expect, it } from 'vitest';
import { interpreterOf } from '../../../web/src/languages/interpreter.ts';

const interpret = interpreterOf({ 'until {0}': 'bis {0}', 'show {0}': 'Schau {0}' });

it('takes a day as the reader writes it for a value, dots and commas and all', () => {
  expect(interpret('until Mo., 30. Nov.')).toBe('bis Mo., 30. Nov.');
  expect(interpret('show Sa., 12. Juni 2027')).toBe('Schau Sa., 12. Juni 2027');
  expect(interpret('until za 12 jun 2027')).toBe('bis za 12 jun 2027');
});

it('gives no day before a number to the words behind it', () =>
  expect(interpreterOf({ '{0} days ago': 'vor {0} Tagen' })('So., 15. Nov., 11 days ago')).toBe(
    'So., 15. Nov., vor 11 Tagen',
  ));
