import { PHONE, resize, TABLETS, test } from './support/stage.ts'
import { view } from './support/views.ts'
const out = '/work/shots/counter/own'
const size = TABLETS[1]!
const own: Record<string, (string | RegExp)[]> = {
  'b-ask': ['They said: none', /^Garden chicken/, /^Another/],
  'b-ask-needs': ['They said: none', /^Garden chicken/, /^Another/, 'Milk', 'Sesame'],
}
for (const [name, taps] of Object.entries(own))
  test(name, async ({ see }) => {
    const page = await see(view('counter, ask'))
    await resize(page, size)
    for (const tap of taps) { await page.getByRole('button', { name: tap }).first().click(); await page.waitForTimeout(500) }
    for (const s of [...TABLETS, PHONE]) { await resize(page, s); await page.screenshot({ path: `${out}-${name}-${s.width}.png` }) }
  })
test('changing', async ({ see }) => {
  const page = await see(view('counter, few tickets'))
  await page.getByRole('button', { name: /^Change/ }).first().click(); await page.waitForTimeout(500)
  for (const s of [...TABLETS, PHONE]) { await resize(page, s); await page.screenshot({ path: `${out}-changing-${s.width}.png` }) }
  await resize(page, size)
  await page.getByRole('button', { name: /Change/ }).first().click(); await page.waitForTimeout(500)
  for (const s of [...TABLETS, PHONE]) { await resize(page, s); await page.screenshot({ path: `${out}-changing-ask-${s.width}.png` }) }
})
test('sent', async ({ see }) => {
  const page = await see(view('counter, ask'))
  for (const tap of ['They said: none', /^Garden chicken/, /^I said it: send/]) { await page.getByRole('button', { name: tap }).first().click(); await page.waitForTimeout(600) }
  for (const s of [...TABLETS, PHONE]) { await resize(page, s); await page.screenshot({ path: `${out}-sent-${s.width}.png` }) }
  await page.context().setOffline(true)
  await page.evaluate(() => {})
  for (const tap of ['They said: none', /^Garden chicken/]) { await page.getByRole('button', { name: tap }).first().click(); await page.waitForTimeout(600) }
  await page.waitForTimeout(12000)
  await page.getByRole('button', { name: /^I said it: send/ }).click(); await page.waitForTimeout(2500)
  for (const s of [...TABLETS, PHONE]) { await resize(page, s); await page.screenshot({ path: `${out}-late-${s.width}.png` }) }
})
test('four', async ({ look }) => {
  const page = await look(view('counter, read-back, four needs'))
  for (const s of [...TABLETS, PHONE]) { await resize(page, s); await page.screenshot({ path: `${out}-four-${s.width}.png` }); console.log(s.width, await page.locator('[data-size]').evaluateAll((all) => all.map((e) => [(e as HTMLElement).dataset.size, e.scrollHeight, e.clientHeight, e.clientWidth, e.textContent?.length].join(' ')))) }
})
