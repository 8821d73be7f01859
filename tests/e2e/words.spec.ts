import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { rowOf } from './bench.ts';

/** A mat of the project's own with three slips: a count, a word of the other terms in a word broken by a hyphen, and words that say nothing. */
const FAULTY = `Small mat
Gauge: 16 sts and 18 rows = 10 cm in sc
Yarn A: slate #4b5a6b

MAT (worked flat)
Foundation: with A, ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Row 2: ch 1, turn, *sc in next 2 sts, 2 sc in next
st; rep from * to end. (15 sc)
Row 3: ch 2, turn, half tre-
ble in each st across. (16 sts)
Row 4: ch 1, turn, flurble the wumpus, sc in each st across. (16 sc)
Rows 5-8: ch 1, turn, sc in each st across. (16 sc)
`;

const field = (page: Page) => page.getByRole('textbox', { name: /Paste the rows/ });
const understood = (page: Page) => page.getByRole('table', { name: 'What was understood' });

async function paste(page: Page, text: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Read a written pattern' }).click();
  await field(page).fill(text);
}

/** The file that a press of Save gives. */
async function saved(page: Page): Promise<{ readonly name: string; readonly text: string }> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save it as a/ }).click();
  const file = await download;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

test('a faulty pattern is pasted, mended by touch, opened, edited and taken away in two wordings', async ({ page }) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));

  // What is found stands with the row that it is in, and with a mend where that is certain.
  await paste(page, FAULTY);
  await expect(page.getByText('Says 15, makes 16.')).toBeVisible();
  await expect(understood(page).locator('mark', { hasText: 'flurble the wumpus' })).toBeVisible();
  await understood(page).getByRole('button', { name: 'Show in the text: line 10' }).click();
  expect(await field(page).evaluate((element: HTMLTextAreaElement) => element.value.slice(element.selectionStart, element.selectionEnd))).toBe('ch 2, turn, half tre-\nble in each st across. (16 sts)');

  // A mend goes to its words in the text, across the break of the line, and is taken back.
  await understood(page).getByRole('button', { name: 'Mend: 16' }).click();
  await expect(field(page)).toHaveValue(FAULTY.replace('(15 sc)', '(16 sc)'));
  await page.getByRole('button', { name: 'Undo the mend' }).click();
  await expect(field(page)).toHaveValue(FAULTY);
  await page.getByRole('button', { name: /^Mend all 2/ }).click();
  await expect(field(page)).toHaveValue(FAULTY.replace('(15 sc)', '(16 sc)').replace('half tre-\nble', 'hdc'));

  // Its terms are told, and can be set.
  await expect(page.getByText(/Its words are US terms/)).toBeVisible();
  await page.getByRole('combobox', { name: 'Terms' }).selectOption('uk');
  await expect(page.getByText('Read in UK terms, as set here.')).toBeVisible();
  await page.getByRole('combobox', { name: 'Terms' }).selectOption('text');

  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await expect(rowOf(page, 'Row 2')).toContainText('16');

  // Words that say nothing are marked in the row too; other words make another row.
  await expect(rowOf(page, 'Row 4').locator('mark')).toHaveText('flurble the wumpus');
  await rowOf(page, 'Row 4').getByRole('button', { name: /^Edit the words/ }).click();
  const words = page.getByRole('textbox', { name: 'Words of Row 4' });
  await words.fill('ch 1, turn, sc in next 3 sts, sc2tog, sc in each st across. (16 sc)');
  await page.getByRole('button', { name: 'Change row 4' }).click();
  await rowOf(page, 'Row 4').getByRole('button', { name: 'Mend: 15' }).click();
  await expect(rowOf(page, 'Row 4')).toContainText('(15 sc)');

  // A stitch in hand underlines the clause that made it.
  const chart = page.getByRole('application', { name: /of Small mat/ });
  await chart.focus();
  await rowOf(page, 'Row 4').hover();
  await rowOf(page, 'Row 4').locator('[data-clause]', { hasText: 'sc2tog' }).hover();
  await expect(chart.locator('.overlay .selected')).toHaveCount(1);

  // The whole section as text: marked and mended there, and put in as one step.
  await page.getByRole('button', { name: 'as text' }).click();
  const section = page.getByRole('textbox', { name: 'Text of the section' });
  const text = await section.inputValue();
  await section.fill(text.replace('Rows 5-8: ch 1, turn, sc in each st across. (16 sc)', 'Rows 5-6: ch 1, turn, sc in each st across. (14 sc)\nFasten off.'));
  await page.getByRole('dialog').getByRole('button', { name: 'Mend: 15' }).click();
  await expect(page.getByRole('dialog').getByText('Nothing to ask about.')).toBeVisible();
  await page.getByRole('button', { name: 'Put it in, as one step' }).click();
  await expect(page.getByText('Checks: all numbers agree')).toBeVisible();
  await expect(rowOf(page, 'Row 6')).toContainText('15');
  await expect(rowOf(page, 'Row 7')).toHaveCount(0);

  // Taken away in two wordings and forms; the wording is the pattern's own.
  await page.getByRole('button', { name: 'Take away' }).click();
  expect((await saved(page)).text).toContain('Row 4: ch 1, turn, sc in next 3 sts, sc2tog, sc in each st across. (15 sc)');
  const shown = page.getByRole('dialog').locator('figure');
  await expect(shown).toContainText('*sc in next 2 sts, 2 sc in next st; rep from * to end. (16 sc)');
  await page.getByRole('group', { name: 'Stitches' }).getByRole('button', { name: '6 sc', exact: true }).click();
  await page.getByRole('group', { name: 'Repeats' }).getByRole('button', { name: '[…] to end' }).click();
  await page.getByRole('group', { name: 'Counts' }).getByRole('button', { name: '— 26 sts' }).click();
  await page.getByRole('group', { name: 'Terms' }).getByRole('button', { name: 'UK' }).click();
  await expect(shown).toContainText('[2 dc, 2 dc in next st] to end — 16 dc');
  await page.getByRole('group', { name: 'As' }).getByRole('button', { name: 'web page' }).click();
  const web = await saved(page);
  expect(web.name).toBe('small-mat.html');
  expect(web.text).toContain('ch 1, turn, 3 dc, dc2tog, dc in each st across — 15 dc');
  await page.getByRole('button', { name: 'Back to the bench' }).click();
  await expect(page.getByRole('button', { name: /^Undo/ })).toContainText('Choose the wording');
  expect(errors).toEqual([]);
});

test('the same way by keyboard, and what is copied', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('/');
  await page.getByRole('button', { name: 'Read a written pattern' }).focus();
  await page.keyboard.press('Enter');
  await field(page).focus();
  await page.keyboard.insertText(FAULTY);
  await understood(page).getByRole('button', { name: 'Mend: 16' }).focus();
  await page.keyboard.press('Enter');
  await expect(field(page)).toHaveValue(/\(16 sc\)\nRow 3/);
  await page.getByRole('button', { name: 'Put it on the bench' }).focus();
  await page.keyboard.press('Enter');

  // A stitch in hand marks the clause that made it, among the words of its row.
  await page.getByRole('application', { name: /of Small mat/ }).focus();
  for (const key of ['ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
  await expect(rowOf(page, 'Row 2').locator('[data-clause].lit')).toHaveText('2 sc in next st');

  const edit = rowOf(page, 'Row 3').getByRole('button', { name: /^Edit the words/ });
  await edit.focus();
  await page.keyboard.press('Enter');
  const words = page.getByRole('textbox', { name: 'Words of Row 3' });
  await expect(words).toBeFocused();
  // The caret lights the stitches of the clause that it is in.
  await page.keyboard.press('ControlOrMeta+Home');
  for (let i = 0; i < 14; i++) await page.keyboard.press('ArrowRight');
  await expect(page.locator('.overlay .selected')).toHaveCount(1);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('ch 1, turn, sc in each st across. (16 sc)');
  await page.keyboard.press('Enter');
  await expect(words).toHaveCount(0);
  await expect(rowOf(page, 'Row 3')).toContainText('sc in each st across');

  await page.getByRole('button', { name: 'Take away' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Copy the written pattern' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Copied, as plain text.')).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('Row 3: ch 1, turn, sc in each st across. (16 sc)');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

test('web pages, Markdown and texts of older programs are read as they are', async ({ page }, info) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Read a written pattern' }).click();
  const choose = async (name: string, content: string | Buffer) => {
    const path = info.outputPath(name);
    writeFileSync(path, content);
    await page.locator('input[type=file]').setInputFiles(path);
  };
  await choose('mat.html', '<!doctype html><html><head><title>x</title><style>p{}</style></head><body><h1>Mat</h1><dl><dt>Terms</dt><dd>US</dd></dl><h2>MAT</h2><p><b>Rnd 1:</b> magic ring, 6&nbsp;sc in ring. (6&nbsp;sc)</p><p>Rnd 2: 2 sc in each st<br>around. (12 sc)</p><script>document.title="run"</script></body></html>');
  await expect(field(page)).toHaveValue('Mat\nTerms: US\n\nMAT\nRnd 1: magic ring, 6 sc in ring. (6 sc)\nRnd 2: 2 sc in each st\naround. (12 sc)\n');
  await expect(page.getByText('Its words were taken out of the web page.')).toBeVisible();
  await expect(page.getByText(/2 rows, 1\d stitches.*Nothing to ask about/)).toBeVisible();
  await choose('mat.md', '# Mat\n\n## MAT\n\n**Rnd 1:** magic ring, 6 sc in ring. (6 sc)\n\n**Rnd 2:** \\*2 sc in next st; rep from \\* around. (12 sc)\n');
  await expect(field(page)).toHaveValue(/Rnd 2: \*2 sc in next st; rep from \* around/);
  await expect(page.getByText(/2 rows, 1\d stitches.*Nothing to ask about/)).toBeVisible();
  // Windows-1252: an en dash is the byte 0x96.
  await choose('old.txt', Buffer.from('Mat\n\nMAT\nRnd 1: magic ring, 6 sc in ring. (6 sc)\nRnds 2\x963: sc in each st around. (6 sc)\n', 'latin1'));
  await expect(field(page)).toHaveValue(/Rnds 2–3/);
  await choose('spoilt.txt', 'Mat\n\nMAT\nRnd 1: magic ring, 6 sc in ring. (6 sc)\nRnds 2â€“3: sc in each st around. (6 sc)\n');
  await expect(field(page)).toHaveValue(/Rnds 2–3/);
  await expect(page.getByText('Signs that another program had spoilt were set right.')).toBeVisible();
  await choose('scan.pdf', '%PDF-1.7 …');
  await expect(page.getByRole('alert')).toContainText('it is no text');
});

test('a book of rows is read without holding up the page', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Read a written pattern' }).click();
  const rows = Array.from({ length: 2500 }, (_, i) => `Row ${i + 2}: ch 1, turn, sc in next ${(i % 7) + 3} sts, 2 sc in next st, sc2tog, sc in each st across. (40 sc)`);
  const text = `Big\nTerms: US\n\nLEG\nFoundation: ch 41.\nRow 1: sc in 2nd ch from hook and in each ch across. (40 sc)\n${rows.join('\n')}\n`;
  const longestMs = await field(page).evaluate(async (element: HTMLTextAreaElement, value) => {
    let longest = 0;
    new PerformanceObserver((list) => list.getEntries().forEach(({ duration }) => (longest = Math.max(longest, duration)))).observe({ entryTypes: ['longtask'] });
    element.value = value;
    element.dispatchEvent(new Event('input', { bubbles: true }));
    while (!document.querySelector('[aria-label="What was understood"]')) await new Promise((resolve) => setTimeout(resolve, 50));
    await new Promise((resolve) => setTimeout(resolve, 300));
    return longest;
  }, text);
  await expect(page.getByText(/2501 rows, 102581 stitches/)).toBeVisible();
  // Reading it where the page is drawn takes about a second.
  expect(longestMs).toBeLessThan(500);
  await page.getByRole('button', { name: 'Show more of 2502 lines' }).click();
  await expect(understood(page)).toContainText('Row 401');
});
