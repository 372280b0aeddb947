import { expect, it } from 'vitest';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

journeys('findings and ledger', (visit) => {
  it('lead to the field, and a remedy is one step that can be undone', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Inside diameter', '160 mm');
    await hand.named(page, /^Run R1 .*too slow/);
    await hand.reads(hand.summary(page), /[1-9] of \d runs do not hold/);
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Ledger' }).click();

    const finding = hand
      .findings(page)
      .getByRole('listitem')
      .filter({ hasText: /Router to cyclone/ })
      .first();
    await finding.getByRole('button').first().click();
    await hand.onPlan(page, /^Run R1/).waitFor();
    expect(await hand.onPlan(page, /^Run R1/).getAttribute('aria-pressed')).toBe('true');
    const bore = hand.field(page, 'Inside diameter');
    expect(await bore.inputValue()).toBe('160 mm');

    const remedy = finding.getByRole('button', { name: /^Set diameter to/ });
    const says = /Set diameter to (.*)/.exec(await remedy.innerText())![1]!;
    await remedy.click();
    await expect.poll(() => bore.inputValue()).toBe(says);
    await hand.named(page, /^Run R1 .*, holds/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => bore.inputValue()).toBe('160 mm');
    await hand.named(page, /^Run R1 .*too slow/);
    hand.calm(errors);
  });

  it('lead to the field that a finding is about', async () => {
    const { page, errors } = await visit();
    await hand.emptyShop(page);
    await hand.place(page, 'Cyclone', await hand.spot(page, 0.5, 0.4));
    await hand.reads(hand.findings(page), 'no run is joined to cyclone-1.in');
    await page.keyboard.press('Escape');
    await hand
      .findings(page)
      .getByRole('button', { name: /cyclone-1\.in/ })
      .click();
    expect(await hand.onPlan(page, /^Cyclone cyclone-1/).getAttribute('aria-pressed')).toBe('true');
    hand.calm(errors);
  });

  it('show on the plan what is selected in the ledger, and the other way round', async () => {
    const { page, errors } = await visit();
    await hand.reads(hand.summary(page), 'every run holds');
    await page.getByRole('tab', { name: 'Ledger' }).click();
    const cyclone = hand.ledger(page).getByRole('row', { name: /^Cyclone/ });
    await cyclone.click();
    expect(await cyclone.getAttribute('aria-selected')).toBe('true');
    await hand.reads(hand.selection(page), /Cyclone/);
    await page.getByRole('tab', { name: 'Plan' }).click();
    expect(await hand.onPlan(page, /^Cyclone/).getAttribute('aria-pressed')).toBe('true');

    await hand.dismissGuide(page);
    await hand.onPlan(page, /^Fan fan/).click();
    await page.getByRole('tab', { name: 'Ledger' }).click();
    const fan = hand.ledger(page).getByRole('row', { name: /^Fan/ });
    expect(await fan.getAttribute('aria-selected')).toBe('true');
    expect(await cyclone.getAttribute('aria-selected')).toBe('false');
    // by key: a row down, then to the plan
    await fan.focus();
    await page.keyboard.press('ArrowDown');
    expect(await hand.runRow(page, 'R3').getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Enter');
    await expect.poll(() => hand.onPlan(page, /^Run R3/).getAttribute('aria-pressed')).toBe('true');
    hand.calm(errors);
  });

  it('follow the gate setting that is chosen in one click, and stand side by side in a table', async () => {
    const { page, errors } = await visit();
    await hand.choose(page, 'File', /five machines/);
    const chips = page.getByRole('radiogroup', { name: 'Gate setting' });
    await hand.named(page, /^Gate G-planer, open in setting planer alone/);
    const alone = await hand.named(page, /^Run R1 .* fpm/);
    await chips.getByRole('radio', { name: 'all open' }).click();
    await hand.named(page, /^Gate G-sander, open in setting all open/);
    await hand.reads(hand.summary(page), /\d of \d+ runs do not hold/);
    expect(await hand.named(page, /^Run R1 .* fpm/)).not.toBe(alone);
    await page.keyboard.press('Control+.');
    await hand.named(page, /^Gate G-sander, shut in setting planer alone/);

    await page.getByRole('tab', { name: 'Ledger' }).click();
    await page.getByRole('button', { name: 'All settings' }).click();
    const table = page.getByRole('table', { name: /^All settings/ });
    await expect
      .poll(() => table.getByRole('columnheader').allInnerTexts())
      .toEqual(
        expect.arrayContaining([
          'planer alone',
          'jointer alone',
          'band saw alone',
          'saw and sander',
          'all open',
        ]),
      );
    const row = table.getByRole('row', { name: /^R1\b/ });
    await hand.reads(row, /shut/);
    await table.getByRole('button', { name: 'saw and sander' }).click();
    await page.getByRole('heading', { name: 'Ledger: saw and sander' }).waitFor();
    expect(await chips.getByRole('radio', { name: 'saw and sander' }).getAttribute('aria-checked')).toBe(
      'true',
    );
    hand.calm(errors);
  });
});
