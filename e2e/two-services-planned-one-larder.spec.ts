import { civilDate } from '#lib/measure/civil.ts'
import { parEn } from '#lib/rooms/prep/words/par-en.ts'
import { larderScreen as words } from '#lib/words/larder/screen-en.ts'
import { takeWords } from '#lib/words/larder/take-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { expect, readLog, test } from './support/job.ts'
import { gives, lotJobs, planOn } from './support/larder-hands.ts'
import { planPan } from './support/plan-hands.ts'

test.use({ proved: true, stations: [demoStation] })

const DAY_MS = 86_400_000
/** 3 lb and 2 lb, in whole milligrams. */
const SLAW = 1_360_777
const TUNA = 907_185
/** 2 lb of the slaw. */
const FIRST = 907_185

test('two services planned, one larder: both want the same lot at once, each gets what is left when its turn comes, and the loser is told the way out', async ({
  job,
}) => {
  test.setTimeout(240_000)
  const ends = (id: string, lot: string, amount: number) =>
    job.lead.does({
      ...{ type: 'endFood', what: 'pan', id, end: 'cold', how: 'weighed', initials: 'KT' },
      ...{ amount, lot },
      reading: { tenths: 380, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
    })
  await ends('pan-slaw', 'slaw-1', SLAW)
  await ends('pan-tuna', 'tuna-1', TUNA)

  const one = await job.openStill('/larder')
  const other = await job.openStill('/larder')
  const crew = connectCrew(`http://127.0.0.1:${new URL(one.url()).port}`, 'lead')
  await whenView(crew.client, ({ link }) => link === 'live', 60_000)
  const { timeZone } = demoStation
  const [first, second] = [1, 2].map((days) => civilDate(Date.now() + days * DAY_MS, timeZone))
  if (first === undefined || second === undefined) throw new Error('no days')
  await gives(crew, 's-first', [planOn(first)])
  await gives(crew, 's-second', [planOn(second)])

  await test.step('the later plan doesn’t count on what the earlier one counts on, and says for which day it is', async () => {
    const plan = await job.openStill('/plan?service=s-second')
    await planPan(plan, 'Sesame slaw').click()
    await expect(plan.getByText(parEn.promised(first, 1))).toBeVisible()
    const earlier = await job.openStill('/plan?service=s-first')
    await planPan(earlier, 'Sesame slaw').click()
    await expect(earlier.getByText(/^In the larder: 30/)).toBeVisible()
    await expect(earlier.getByText(parEn.promised(first, 1))).toHaveCount(0)
  })

  const screens = [one, other] as const
  /** The planned services as the panel offers them, the earlier day first; the open one is above. */
  const into = (page: typeof one, day: 0 | 1) =>
    lotJobs(page)
      .getByRole('button', { name: /^Take it into \w{3}, \w{3} \d+/ })
      .nth(day)
  const chosen = async (name: RegExp, amount: string): Promise<void> => {
    for (const page of screens) {
      await page.getByRole('button', { name }).click()
      await lotJobs(page).getByLabel(takeWords.amount).fill(amount)
    }
    await expect(into(one, 0)).toBeVisible()
    await expect(into(other, 1)).toBeVisible()
  }
  const bothTap = () => Promise.all([into(one, 0).click(), into(other, 1).click()])
  const taken = (page: typeof one) => page.getByText(/^Taken: /)

  await test.step('2 lb of 3 each: one has it, the other is told what is left, and takes that', async () => {
    await chosen(/slaw/i, '2')
    await bothTap()
    const told = /not taken\. There isn’t that much of it: 1 lb is left\. Take that, or less\./
    await expect(one.getByText(told).or(taken(one))).toBeVisible()
    await expect(other.getByText(told).or(taken(other))).toBeVisible()
    const oneWon = await taken(one).isVisible()
    expect([oneWon, await taken(other).isVisible()].filter(Boolean)).toHaveLength(1)
    const loser = oneWon ? other : one
    await expect(loser.getByRole('button', { name: /slaw/i })).toContainText('1 lb')
    await loser.screenshot({ path: 'test-results/two-planned-less.png' })
    await lotJobs(loser).getByLabel(takeWords.amount).fill('')
    await into(loser, oneWon ? 1 : 0).click()
    await expect(taken(loser)).toBeVisible()
    for (const page of screens)
      await expect(page.getByRole('button', { name: /slaw/i })).toHaveCount(0)
  })

  await test.step('all of another at once: one has it, the other is told that it is gone, and takes another', async () => {
    await chosen(/tuna/i, '')
    await bothTap()
    const gone =
      /^Tuna salad: not taken\. It was taken into a service at .+: it isn’t there any more\. Take another\./
    const lost = screens.map((page) => page.getByText(gone))
    const isTold = () => Promise.all(lost.map((one) => one.isVisible()))
    await expect.poll(async () => (await isTold()).filter(Boolean).length).toBe(1)
    const told = await isTold()
    await screens[told[0] ? 0 : 1].screenshot({ path: 'test-results/two-planned-gone.png' })
    for (const page of screens) await expect(page.getByText(words.empty)).toBeVisible()
  })

  crew.close()
  await job.log()
  const inFirst = await readLog(job.data, 's-first')
  const inSecond = await readLog(job.data, 's-second')
  const all = [...inFirst, ...inSecond].flatMap((event) =>
    event.type === 'foodTaken' ? [event] : [],
  )
  const of = (lot: string) =>
    all
      .filter((one) => one.lot === lot)
      .map(({ amount }) => amount)
      .sort((a, b) => b - a)
  expect(of('slaw-1')).toEqual([FIRST, SLAW - FIRST])
  expect(of('tuna-1')).toEqual([TUNA])
})
