import { describe, expect, it } from 'vitest';
import { segmentsOf, toGsm7 } from '../../../shared/dispatch/gsm7.ts';

/**
 * 3GPP TS 23.038 clause 6.2.1 (the default alphabet and its extension table) and TS 23.040 clause 9.2.3.24 (153 septets
 * in each part of a concatenated message). From memory; the counts are those that every gateway's help page gives.
 */
describe('the GSM alphabet', () => {
  it('has 127 signs beside its escape code, and ten that go with it', () => {
    const single = Array.from({ length: 0x500 }, (_, code) => String.fromCodePoint(code))
      .concat('€')
      .filter((sign) => toGsm7(sign) === sign);
    // One septet: 160 of it are one message. Two: 80 are, and 81 are not.
    const ones = single.filter((sign) => segmentsOf(sign.repeat(160)) === 1);
    const twos = single.filter((sign) => segmentsOf(sign.repeat(160)) > 1);
    // Carriage return and form feed are in the table, and no text of ours holds a control character.
    expect(ones).toHaveLength(127 - 1);
    expect(twos.sort()).toEqual(Array.from('^{}\\[~]|€').sort());
    for (const sign of twos) {
      expect(segmentsOf(sign.repeat(80))).toBe(1);
      expect(segmentsOf(sign.repeat(81))).toBe(2);
    }
  });

  it.each([
    [160, 1],
    [161, 2],
    [306, 2],
    [307, 3],
    [459, 3],
    [460, 4],
  ])('%i plain signs take %i', (count, messages) => {
    expect(segmentsOf('a'.repeat(count))).toBe(messages);
  });

  it('does not tear an escape code from its sign', () => {
    // 152 and then a sign of two septets: the pair starts the second part, which has room for 151 more.
    expect(segmentsOf(`${'a'.repeat(152)}€${'a'.repeat(151)}`)).toBe(2);
    expect(segmentsOf(`${'a'.repeat(152)}€${'a'.repeat(152)}`)).toBe(3);
  });

  it.each([
    ['Peñón Güiraldes, Ñandú', 'Peñon Güiraldes, Ñandu'],
    ['José y María: ¿cuándo? ¡Ya!', 'José y Maria: ¿cuando? ¡Ya!'],
    ['Mill Rd – “north” corner’s…', 'Mill Rd - "north" corner\'s...'],
    ['5\u00a0½ ft × 2', '5 1/2 ft x 2'],
    ['a\u202eb\u200bc\td', 'abc d'],
    ['消火栓', '???'],
    ['Łódź', '?odz'],
  ])('writes %j as %j', (text, plain) => {
    expect(toGsm7(text)).toBe(plain);
    expect(segmentsOf(toGsm7(text))).toBe(1);
  });

  it('refuses to count what is not in it', () => {
    expect(() => segmentsOf('á')).toThrow(RangeError);
  });
});
