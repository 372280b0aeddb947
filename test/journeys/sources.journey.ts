import { expect, it } from 'vitest';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';
import { accessible, tidy } from './looks.ts';

const THROAT = 'Take-off coefficient';

journeys('what figures rest on', (visit) => {
  it('is one click from a run of the ledger, and leads to the field that replaces what is assumed', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await page.getByRole('tab', { name: 'Ledger' }).click();
    await hand
      .runRow(page, 'R1')
      .getByRole('button', { name: 'Why: where the loss of R1 comes from' })
      .click();
    const why = page.getByRole('dialog', { name: 'Source and basis' });
    await hand.reads(why, /\d+ assumed, \d+ common practice, \d+ from memory/);
    await hand.reads(why, 'Colebrook');
    const row = why.getByRole('listitem').filter({ hasText: 'Take-off of a shoe' });
    await hand.reads(row, 'assumed');
    await accessible(page, 'what a run rests on');
    await row.getByRole('button', { name: 'Set take-off of a shoe' }).click();

    await why.waitFor({ state: 'hidden' });
    expect(await hand.onPlan(page, /^Machine port/).getAttribute('aria-pressed')).toBe('true');
    const field = hand.field(page, THROAT);
    await expect.poll(() => field.evaluate((input) => input === document.activeElement)).toBe(true);
    await hand.type(page, THROAT, '0.45');

    const rests = hand
      .selection(page)
      .getByRole('group')
      .filter({ hasText: /^\s*Rests on/ });
    await rests.getByText('Rests on', { exact: true }).click();
    const own = rests.getByRole('listitem').filter({ hasText: 'Take-off of a shoe' });
    await hand.reads(own, /0\.450[\s\S]*given in the document[\s\S]*your own/);
    await accessible(page, 'what a port rests on');
    await tidy(page, 'the plan');
    hand.calm(errors);
  });

  it('is there for each piece, by key, and for the air of the room', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await page.getByRole('tab', { name: 'Ledger' }).click();
    const elbow = hand.ledger(page).getByRole('row', { name: /^Elbow R1\.6/ });
    await elbow.click();
    await elbow.focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    const why = page.getByRole('dialog', { name: 'Source and basis' });
    await hand.reads(why, /Elbow, smooth bend, R\/D [\d.]+, 90/);
    await why.getByText(/and what the whole shop rests on/).click();
    await hand.reads(why, 'Density of moist air');
    await page.keyboard.press('Escape');
    await why.waitFor({ state: 'hidden' });

    await page.keyboard.press('Escape');
    await hand.selection(page).getByText('Rests on', { exact: true }).click();
    await hand.reads(hand.selection(page), 'CIPM-2007');
    hand.calm(errors);
  });
});
