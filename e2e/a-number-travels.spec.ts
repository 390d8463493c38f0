import type { Page } from '@playwright/test'
import { isRunning } from '#lib/service/state.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { send, usualChicken, work } from '#tests/support/scene-steps.ts'
import { pickUpNumber } from './support/hands.ts'
import { expect, TABLET, test } from './support/stage.ts'
import { view } from './support/views.ts'

declare global {
  interface Window {
    /** Builds whose number was set moving, in order. */
    travelled?: string[]
  }
}

const watched = async (page: Page): Promise<Page> => {
  await page.addInitScript(() => {
    const seen: string[] = []
    window.travelled = seen
    const animate = Element.prototype.animate
    Element.prototype.animate = function (...how) {
      seen.push(this.getAttribute('data-build') ?? 'what is no number')
      return animate.apply(this, how)
    }
  })
  await page.reload()
  await expect(page.getByText('None yet')).toBeVisible()
  return page
}

const travelled = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => window.travelled ?? ['never watched'])

test('[PU9] a number travels where its build moved, and jumps where less motion is asked for', async ({
  see,
  server,
  standing,
}) => {
  const empty = view('pick-up, empty')
  const page = await watched(await see(empty))
  const still = await watched(await see(empty, { reducedMotion: 'reduce' }))
  standing.scene = null
  const { client, close } = connectCrew(server.url, 'lead')
  try {
    await whenView(client, ({ state, link }) => link === 'live' && isRunning(state))
    const steps = [send([usualChicken]), send([usualChicken]), ...work(1, 'A', 'finish')]
    const stands = [
      ['waiting', '1A'],
      ['waiting', '2A'],
      ['making', '1A'],
      ['made', '1A'],
    ] as const
    for (const [at, step] of steps.entries()) {
      const { state } = client.view()
      const [place, build] = stands[at] ?? ['called', '']
      if (!isRunning(state)) throw new Error('no service runs')
      const answer = await client.send(step(state))
      if (answer.answer !== 'accepted') throw new Error(JSON.stringify(answer))
      await whenView(client, ({ position }) => position >= answer.position)
      for (const each of [page, still]) await expect(pickUpNumber(each, place, build)).toBeVisible()
    }
    await page.setViewportSize({ width: 1024, height: 768 })
    await page.setViewportSize({ ...TABLET })
    expect(await travelled(page)).toEqual(['1A', '1A'])
    expect(await travelled(still)).toEqual([])
  } finally {
    close()
  }
})
