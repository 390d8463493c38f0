import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { roundWords } from '#lib/rooms/food/words/round-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { itemRow } from './support/hands.ts'
import { expect, test } from './support/job.ts'
import {
  answerCleaned,
  below,
  countTaps,
  onward,
  record,
  records,
  sayHands,
  startRound,
  takeReading,
  title,
  typeDegrees,
} from './support/round-hands.ts'

const MINUTE = 60_000
const HOT = /rice|chicken|beans|peppers/i
const READINGS = 10
const MOST_TAPS = 30

/** 85 minutes later it is 12:11, and the demo station’s third rush begins at 12:24. */
test.use({ clock: { beginsAt: Date.parse('2026-11-25T16:46:00Z'), passes: [85 * MINUTE] } })

/** Sixteen forms, one after the other. */
test.slow()

test('a round before the rush: ten readings in at most 30 taps beside the figures', async ({
  job,
}) => {
  await job.lead.does({ type: 'setDay', guestsExpected: 120 })
  await job.hoursPass()
  const pans = await job.open('/pans')

  await test.step('it comes due before the rush, and not at its own time', async () => {
    await expect(pans.getByText(/^Take \d+ readings by 12:24/)).toBeVisible()
    await expect(pans.getByText(/^Before the rush at 12:24/)).toBeVisible()
  })

  const tapped = await countTaps(pans)
  await startRound(pans)
  await test.step('protected back-up pans first, and nothing is filled in but the work', async () => {
    await expect(title(pans)).toContainText(/Read 1 of \d+: .*back-up pan/)
    await expect(record(pans)).toBeDisabled()
    await expect(below(pans).getByText(roundWords.how.stir)).toBeVisible()
  })
  await sayHands(pans, '1')
  for (let taken = 0; taken < READINGS; taken += 1) {
    const name = (await title(pans).textContent()) ?? ''
    await takeReading(pans, HOT.test(name) ? '151' : '38')
  }
  expect(await tapped()).toBeLessThanOrEqual(MOST_TAPS)

  const log = await job.log()
  const read = log.filter(({ type }) => type === 'temperatureRead')
  expect(read).toHaveLength(READINGS)
  expect(read.some((one) => 'brought' in one)).toBe(false)
  const kinds = read.map((one) => ('what' in one ? one.what : ''))
  expect(kinds.lastIndexOf('backup')).toBeLessThan(kinds.indexOf('pan'))
})

test('a bad reading in the round: what may be done stands there, and the round goes on', async ({
  job,
}) => {
  await job.hoursPass()
  const [pans, counterPage] = await Promise.all([job.open('/pans'), job.open('/counter')])
  await counterPage.getByRole('button', { name: counter.askedNone }).click()
  await expect(itemRow(counterPage, 'Bean and pepper')).not.toContainText(
    counter.rowNo('Black beans'),
  )
  await startRound(pans)
  await sayHands(pans, '1')
  for (;;) {
    const name = (await title(pans).textContent()) ?? ''
    if (/black beans$/i.test(name)) break
    await takeReading(pans, HOT.test(name) ? '151' : '38')
  }
  await typeDegrees(pans, '128')
  await expect(record(pans)).toContainText(formWords.readOut('128 °F'))
  await expect(async () => {
    await record(pans).click({ timeout: 2_000 })
    await expect(onward(pans)).toBeVisible({ timeout: 2_000 })
  }).toPass({ timeout: 20_000, intervals: [600] })

  await test.step('it stays, with its ways out; the way on names the next pan', async () => {
    await expect(below(pans).getByText(/^Read 128 °F at .* Limit: 135 °F or above\./)).toBeVisible()
    await expect(below(pans).getByRole('button', { name: /^Throw it out/ })).toBeVisible()
    await expect(title(pans)).toContainText(/black beans$/i)
    await expect(onward(pans)).toContainText(/roast peppers/i)
    await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(
      counter.rowNo('Black beans'),
    )
  })
  await onward(pans).click()
  await expect(title(pans)).toContainText(/roast peppers$/i)
  await takeReading(pans, '151')
  const log = await job.log()
  expect(log.filter(({ type }) => type === 'takenOffSale')).toMatchObject([
    { what: 'pan', id: 'pan-beans', why: 'out-of-limits' },
  ])
})

test('the probe went into the nuts first: the back-up pan isn’t protected any more', async ({
  job,
}) => {
  await job.signOn()
  await job.hoursPass()
  // Almonds went into the sauce, and the probe into that.
  await job.lead.does({ type: 'soilPan', pan: 'pan-yogurt-sauce', by: 'almonds' })
  await job.lead.does({
    type: 'readTemperature',
    what: 'pan',
    id: 'pan-yogurt-sauce',
    reading: { tenths: 380, scale: 'F', probe: '1', where: 'middle-stirred' },
    initials: 'BO',
  })
  const pans = await job.open('/pans')
  await startRound(pans)
  await expect(title(pans)).toContainText(/back-up pan/)
  await sayHands(pans, '1')

  await test.step('it is asked before the reading is sent, and never taken for said', async () => {
    await expect(below(pans).getByText(/This probe was in/)).toContainText('toasted almonds')
    await typeDegrees(pans, '151')
    await expect(record(pans)).toHaveText(roundWords.lackClean)
    await expect(record(pans)).toBeDisabled()
  })

  await test.step('not cleaned: the pan says what it may contain, and isn’t protected', async () => {
    await answerCleaned(pans, false)
    await expect(below(pans).getByText(/isn’t protected after this reading/)).toContainText(
      'toasted almonds',
    )
    await expect(record(pans)).toContainText(roundWords.endsShort('backup'))
    await records(pans)
    await expect.poll(() => job.lead.state().backups.rice).toBeUndefined()
  })

  await test.step('cleaned: the next one stays protected', async () => {
    await takeReading(pans, '151')
    expect(job.lead.state().backups.chicken).toBeDefined()
  })
  const log = await job.log()
  expect(log.filter((one) => 'brought' in one)).toMatchObject([
    { type: 'temperatureRead', id: 'back-up-rice', brought: ['almonds', 'yogurt-sauce'] },
  ])
})
