import type { Page } from '@playwright/test'
import { carriedFile } from '#lib/carry/canonical.ts'
import { carryWords as words } from '#lib/carry/words/carry-en.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { breaksNoRule, tabReachesAll } from './support/accessible.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true })

const bar = STATION_SETS.find(({ from }) => from === 'potato-bar')?.document
if (bar === undefined) throw new Error('no potato bar')

/** Their potato bar as they have it: its labels read, one dish dearer, a sour cream of oats. */
const theirs: StationDocument = {
  ...bar,
  name: 'Harbor Street potatoes',
  items: bar.items.map((one) => (one.id === 'chili-potato' ? { ...one, priceCents: 850 } : one)),
  ingredients: bar.ingredients.map((one) => ({
    ...one,
    name: one.id === 'sour-cream' ? 'Oat cream' : one.name,
    declarations: { milk: 'free', soy: one.id === 'soup-base' ? 'contains' : 'not-listed' },
    traits: [],
    readOn: '2026-11-20',
    readBy: 'person in charge',
  })),
}

const file = carriedFile(theirs, [])

const ask = (page: Page, path: string, body?: object) =>
  page.evaluate(
    async ([path, body]) => {
      const answer = await fetch(`/menu${path}`, {
        ...(body === null
          ? {}
          : {
              method: 'POST',
              headers: { 'content-type': 'application/json' },
              body: JSON.stringify(body),
            }),
      })
      return (await answer.json()) as Record<string, unknown>
    },
    [path, body ?? null] as const,
  )

const bring = (page: Page, name: string, text: string) =>
  page
    .getByLabel(words.choose)
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })

/** The page of a station that was begun from the same set. */
const carrying = async ({ openStill }: { openStill(path: string): Promise<Page> }) => {
  const page = await openStill('/menu/carry')
  await ask(page, '/begin', { from: 'potato-bar', name: 'Our potatoes' })
  await page.reload()
  await page.getByRole('link', { name: 'Our potatoes' }).click()
  await expect(page.getByRole('link', { name: words.file })).toBeVisible()
  return page
}

test('[CA15] another kitchen’s file: looked at, taken unread, published; a damaged one changes nothing', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/status of 422/, /status of 404/)
  const page = await carrying(job)

  await test.step('damaged, or of a newer program: told, and nothing has changed', async () => {
    const before = await ask(page, '/draft?station=our-potatoes')
    for (const [text, said] of [
      [file.slice(0, 5_000), words.wrongFile({ why: 'cut-off' })],
      [file.replace('"priceCents":850', '"priceCents":5'), words.wrongFile({ why: 'altered' })],
      [
        JSON.stringify({ ...JSON.parse(file), version: 3 }),
        words.wrongFile({ why: 'too-new', version: 3, known: 1 }),
      ],
    ] as const) {
      await bring(page, 'harbor.json', text)
      await expect(page.getByText(`${said} ${words.nothingChanged}`)).toBeVisible()
      await page.getByRole('button', { name: words.leave }).click()
    }
    expect(await ask(page, '/draft?station=our-potatoes')).toEqual(before)
  })

  await test.step('its differences are shown first', async () => {
    await bring(page, 'harbor.json', file)
    await expect(page.getByText(words.brings('Harbor Street potatoes'))).toBeVisible()
    await page.getByRole('button', { name: words.intoThis('Our potatoes') }).click()
    await expect(page.getByText(/^Price of Chili potato: .*8\.50/)).toBeVisible()
    await expect(page.getByText(/^Oat cream: this house calls another “Sour cream”/)).toBeVisible()
    await expect(page.getByText(words.unread(2))).toBeVisible()
    await breaksNoRule(page)
    await tabReachesAll(page)
  })

  await test.step('taken, it is a draft whose new labels nobody has read', async () => {
    await page.getByRole('button', { name: words.take }).click()
    await expect(page.getByText(words.taken('Our potatoes'))).toBeVisible()
    const draft = await ask(page, '/draft?station=our-potatoes')
    expect(draft).toMatchObject({ published: null, problems: [] })
    expect(draft.labels).toMatchObject({
      'oat-cream': { readOn: null, declarations: { milk: 'unknown', soy: 'unknown' } },
    })
    const published = await ask(page, '/publish', {
      station: 'our-potatoes',
      saw: draft.saw,
      proof: PASSPHRASE,
    })
    expect(published).toMatchObject({ code: 'done', revision: 1 })
  })
})

test('[CA15] a table of ingredients: each row says what it does, and a formula stays out', async ({
  job,
}) => {
  const page = await carrying(job)
  const table = [
    'name,maker,contains,declared free',
    'Chives,Ford & Daughter,,',
    'Tahini,,sesame,milk',
    '=cmd,,,',
  ].join('\r\n')
  await bring(page, 'food.csv', table)
  await expect(page.getByRole('row', { name: /^3 Tahini new/ })).toBeVisible()
  await expect(page.getByRole('row', { name: /^4 =cmd stays out/ })).toBeVisible()
  await breaksNoRule(page)
  await page.getByRole('button', { name: words.takeRows(2) }).click()
  await expect(page.getByText(words.rowsTaken(2, 1))).toBeVisible()
})
