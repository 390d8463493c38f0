import type { Page } from '@playwright/test'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { type Label, labelOf } from '#lib/station/label.ts'
import { live } from '#lib/words/house/live-en.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { connectCrew } from '#server/shell/crew-connection.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { gardenChicken, stands } from './support/garden-chicken.ts'
import { startButton } from './support/hands.ts'
import { comeIn, typeCode } from './support/house-hands.ts'
import { expect, openReal, test } from './support/job.ts'
import { seeStop, stopOf } from './support/need-hands.ts'

const WRAPS = { ...demoStation, id: 'wrap-line', name: 'Wrap line' }
/** A line like it, under another name: canola oil is the house's, and in both. */
const NOON = { ...demoStation, id: 'noon-line', name: 'Noon line' }

const WHY = sayWhyHeld({ reason: 'label', ingredients: ['Canola oil'] })
const SMALL = { viewport: { width: 1024, height: 768 } }

const oil = demoStation.ingredients.find(({ id }) => id === 'canola-oil')
if (oil === undefined) throw new Error('no canola oil')
const OIL = { ...labelOf(oil), readBy: null }
const WITH_PEANUT: Label = { ...OIL, declarations: { ...OIL.declarations, peanut: 'contains' } }

/** As the page's own device says it. */
const tell = (page: Page, path: string, body: object) =>
  page.evaluate(
    async ([path, body]) => {
      const answer = await fetch(path, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      })
      return (await answer.json()) as Record<string, unknown>
    },
    [path, body] as const,
  )

const holdsOf = (state: ServiceState) =>
  isRunning(state) ? openBuilds(state).map(({ build }) => build.hold?.reason ?? null) : null

// Two in a list alone are read as one with its options.
test.use({ proved: true, stations: [[WRAPS, NOON], { scope: 'test' }] })

test('a second station, one label: each line hears only its own, and a label reaches both', async ({
  job,
}) => {
  const wraps = await job.open(`/counter?station=${WRAPS.id}`, SMALL)
  const url = `http://127.0.0.1:${new URL(wraps.url()).port}`
  const { client, close } = connectCrew(url, 'lead', () => scriptsToken(url), { station: NOON.id })
  await test.step('its service is opened beside the first one’s', () => openReal(client, NOON))
  const noon = await job.open(`/counter?station=${NOON.id}`, SMALL)
  const [made, noonMade] = [
    await job.open(`/assembly?station=${WRAPS.id}`, SMALL),
    await job.open(`/assembly?station=${NOON.id}`, SMALL),
  ]

  const tablet = await test.step('a tablet is let in at the second line', async () => {
    const wanted = { role: 'assembly', station: NOON.id }
    const { code, typed } = await tell(noon, '/access/codes', wanted)
    expect(code).toBe('done')
    const page = await job.openStill('/join', false)
    await typeCode(page, String(typed))
    await comeIn(page)
    await expect(page.getByText(NOON.name).first()).toBeVisible()
    // What its address asks for is the other line: where it was let in counts.
    await page.goto(`/assembly?station=${WRAPS.id}`)
    await expect(page.getByText(live.isLive, { exact: true }).first()).toBeVisible()
    return page
  })

  await test.step('each line has a guest who keeps peanut away, the first one another guest too', async () => {
    await stands(job.lead, 1, 'leave-out', [])
    await stands(job.lead, 2, null, [])
    const builds = [gardenChicken(job.lead, 'leave-out')]
    const sent = await client.send({ type: 'send', builds, paid: false, readBack: true })
    expect(sent).toMatchObject({ answer: 'accepted' })
    await expect(made.getByText('2-\u2060A').first()).toBeVisible()
    for (const page of [noonMade, tablet]) {
      await expect(page.getByText('1-\u2060A').first()).toBeVisible()
      await expect(page.getByText('2-\u2060A')).toHaveCount(0)
    }
    expect([holdsOf(job.lead.state()), holdsOf(client.view().state)]).toEqual([
      [null, null],
      [null],
    ])
  })

  await test.step('one label changes, and both lines stop what no longer fits', async () => {
    const answer = await tell(wraps, '/menu/labels', {
      station: WRAPS.id,
      ingredient: 'canola-oil',
      saw: 0,
      label: WITH_PEANUT,
      is: 'same',
      proof: { passphrase: PASSPHRASE },
    })
    expect(answer).toMatchObject({ code: 'done', told: [WRAPS.id, NOON.id] })
    for (const page of [made, noonMade, tablet]) {
      await expect(stopOf(page).filter({ hasText: assemblyEn.notBeingMade('1A') })).toContainText(
        WHY,
      )
    }
    for (const page of [wraps, noon])
      await expect(page.getByText(needsEn.heldNow(['1A']))).toBeVisible()
    await expect.poll(() => holdsOf(client.view().state)).toEqual(['label'])
    expect(holdsOf(job.lead.state())).toEqual(['label', null])
  })

  await test.step('what has no need goes on, and the other line hears nothing of it', async () => {
    await seeStop(made, '1A', startButton(made, '2A'))
    for (const page of [noonMade, tablet]) await expect(page.getByText('2-\u2060A')).toHaveCount(0)
  })
  close()
})
