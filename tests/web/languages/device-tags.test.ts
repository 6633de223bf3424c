import { describe, expect, it } from 'vitest';
import { deviceTags } from '../../../web/src/languages/device-tags.ts';

describe('the languages that a device says', () => {
  it('are kept in their order as tags that dates can be written by', () => {
    const tags = deviceTags(['de-at', 'nl', 'en-GB']);
    expect(tags).toEqual(['de-AT', 'nl', 'en-GB']);
    for (const tag of tags) expect(() => new Intl.DateTimeFormat(tag)).not.toThrow();
  });

  it('lose what a Unix system hangs on', () => {
    expect(deviceTags(['en-US@posix', 'de_DE.UTF-8'])).toEqual(['en-US', 'de-DE']);
  });

  it('are left out where they are no tags', () => {
    expect(deviceTags(['C', '', 'not a tag', '*'])).toEqual([]);
  });
});
