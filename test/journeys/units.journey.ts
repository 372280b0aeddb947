import { expect, it } from 'vitest';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

journeys('units', (visit) => {
  it('change from metric to US and back, while what was typed stays as it was typed', async () => {
    const { page, errors } = await visit();
    await hand.reads(hand.summary(page), 'm3/h');
    const before = await hand.named(page, /^Run R1/);
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Name', 'Hose to the cyclone');
    const bore = hand
      .selection(page)
      .getByRole('textbox', { name: /diameter/i })
      .first();
    const typed = await bore.inputValue();
    await bore.fill('4.125 in');
    await bore.press('Enter');
    await hand.reads(hand.selection(page), '= 104.8 mm');

    const units = page.getByLabel('Units shown');
    await units.selectOption({ label: 'US customary' });
    await hand.reads(hand.summary(page), /cfm at [\d.]+ in wg/);
    await hand.named(page, /^Run R1 .*fpm, needs [\d]+ fpm/);
    expect(await bore.inputValue()).toBe('4.125 in');

    await page.getByRole('tab', { name: 'Ledger' }).click();
    const heads = hand.ledger(page).getByRole('row').first();
    await hand.reads(heads, /velocity\s*fpm/);
    await hand.reads(heads, /VP\s*in wg/);
    await hand.reads(hand.runRow(page, 'R1'), /cfm, [\d]+ fpm/);
    await units.selectOption({ label: 'metric' });
    await hand.reads(heads, /velocity\s*m\/s/);
    await hand.reads(heads, /VP\s*Pa/);
    await hand.reads(hand.runRow(page, 'R1'), /m3\/h, [\d.]+ m\/s/);

    await page.getByRole('tab', { name: 'Plan' }).click();
    expect(await bore.inputValue()).toBe('4.125 in');
    await bore.fill(typed);
    await bore.press('Enter');
    const figures = (name: string) => name.slice(name.indexOf('typed'));
    await hand.named(
      page,
      new RegExp(`^Run R1 Hose.*${figures(before).replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')}$`),
    );
    hand.calm(errors);
  });
});
