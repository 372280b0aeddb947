import { expect, it } from 'vitest';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

const BAD: readonly (readonly [string, RegExp])[] = [
  ['wide', /wide/],
  ['100 mmm', /mmm/],
  ['3 kg', /length/],
  ['0 mm', /zero|positive/],
  ['-20 mm', /zero|positive/],
  ['1 / 0 mm', /zero|finite|number/],
];

journeys('what cannot be', (visit) => {
  it('is said at its field, and the last good value stays', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.clickRun(page, 'R1');
    const before = await hand.named(page, /^Run R1 .* m\/s/);
    const bore = hand.field(page, 'Inside diameter');
    const good = await bore.inputValue();
    for (const [text, says] of BAD) {
      await bore.fill(text);
      await bore.press('Enter');
      const alert = hand.selection(page).getByRole('alert');
      await hand.reads(alert, says);
      expect(await bore.getAttribute('aria-invalid')).toBe('true');
      // the message stands at the field: it is what describes it
      const described = await bore.getAttribute('aria-describedby');
      expect(await page.locator(`[id="${described}"]`).innerText()).toMatch(says);
      expect(await bore.inputValue()).toBe(text);
      expect(await hand.named(page, /^Run R1/)).toBe(before);
      expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
      await bore.press('Escape');
      expect(await bore.inputValue()).toBe(good);
      await alert.waitFor({ state: 'hidden' });
    }
    await hand.type(page, 'Inside diameter', '90 mm');
    await hand.reads(hand.selection(page), '= 3.543 in');
    hand.calm(errors);
  });

  it('is refused where a picture is no picture', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await page.getByRole('button', { name: 'Picture' }).click();
    const panel = page.getByRole('region', { name: 'Picture under the plan' });
    const chooser = page.waitForEvent('filechooser');
    await panel.getByRole('button', { name: 'Choose a picture…' }).click();
    const buffer = Buffer.from('a list of planks, no picture');
    await (await chooser).setFiles({ name: 'planks.png', mimeType: 'image/png', buffer });
    await hand.reads(panel.getByRole('alert'), /planks\.png is not a picture.*choose a PNG/);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await hand.reads(hand.summary(page), 'every run holds');

    const again = page.waitForEvent('filechooser');
    await panel.getByRole('button', { name: 'Choose a picture…' }).click();
    const dot =
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
    await (
      await again
    ).setFiles({ name: 'floor.png', mimeType: 'image/png', buffer: Buffer.from(dot, 'base64') });
    await hand.reads(panel, 'Click the first point on the picture.');
    expect(await panel.getByRole('alert').count()).toBe(0);
    hand.calm(errors);
  });
});
