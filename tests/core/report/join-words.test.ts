import { expect, it } from 'vitest';
import { joinSentence } from '../../../core/report/join-words.ts';
import { money, plainMoney } from '../../support/writing.ts';

const join = { savedCents: 12_050, lateLines: 1, latenessSeconds: 7200, changeoverSeconds: -720, gain: 5 };

it('joining two runs is told in money and in time', () => {
  expect(joinSentence(join, money('USD'))).toBe(
    'Joined to this run: stock costs $120.50 less, 1 more late line, 2 h more late, 12 min less changeover. By the shop’s priorities that is worth it.',
  );
});

it('says what it does not change, and when it is not worth it', () => {
  const none = { savedCents: -100, lateLines: 0, latenessSeconds: 0, changeoverSeconds: 0, gain: 0 };
  expect(joinSentence(none, plainMoney)).toBe(
    'Joined to this run: stock costs 1.00 more, as late as before, with as much changeover. By the shop’s priorities that is not worth it.',
  );
  expect(joinSentence({ ...none, savedCents: 0 }, plainMoney)).toMatch(/stock costs the same/);
});
