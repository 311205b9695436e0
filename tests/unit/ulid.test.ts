import { ulid } from 'ulid';
import { describe, expect, it } from 'vitest';
import { isUlid } from '../../src/flight/ulid.ts';

describe('a ULID', () => {
  it('is what the ulid package makes', () => {
    for (const atMs of [0, 1, 1_795_600_000_000, 281_474_976_710_655]) {
      expect(isUlid(ulid(atMs))).toBe(true);
    }
  });

  it('is the example of the specification (github.com/ulid/spec, from memory)', () => {
    expect(isUlid('01ARZ3NDEKTSV4RRFFQ69G5FAV')).toBe(true);
  });

  it.each([
    ['', 'nothing'],
    ['01ARZ3NDEKTSV4RRFFQ69G5FA', 'a figure short'],
    ['01ARZ3NDEKTSV4RRFFQ69G5FAVV', 'a figure long'],
    ['01ARZ3NDEKTSV4RRFFQ69G5FAU', 'a letter that is not used'],
    ['81ARZ3NDEKTSV4RRFFQ69G5FAV', 'a time beyond 48 bits'],
    ['01arz3ndektsv4rrffq69g5fav', 'small letters'],
  ])('is not %j: %s', (text) => {
    expect(isUlid(text)).toBe(false);
  });
});
