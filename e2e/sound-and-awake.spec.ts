import type { Page } from '@playwright/test'
import { deviceEn } from '#lib/words/house/device-en.ts'
import { assemblyRests, makeAndMark, order } from './support/hands.ts'
import { expect, test } from './support/job.ts'

declare global {
  interface Window {
    tones?: number
  }
}

/** Counts the tones that a page begins from now on, and plays them all the same. */
const countTones = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    window.tones = 0
    window.AudioContext = class extends AudioContext {
      override createOscillator(): OscillatorNode {
        const tone = super.createOscillator()
        const start = tone.start.bind(tone)
        tone.start = (when) => {
          window.tones = (window.tones ?? 0) + 1
          start(when)
        }
        return tone
      }
    }
  })
  await page.reload()
}

const tones = (page: Page) => page.evaluate(() => window.tones)

test('assembly stays awake and knocks over plain http, and is silent when it is turned off', async ({
  job,
}) => {
  const [counterPage, assembly] = await Promise.all([job.open('/counter'), job.open('/assembly')])
  await countTones(assembly)
  const toggle = (words: string) => assembly.getByRole('button', { name: words, exact: true })

  await test.step('a video that plays holds the screen: plain http has no lock', async () => {
    expect(await assembly.evaluate(() => [isSecureContext, 'wakeLock' in navigator])).toEqual([
      false,
      false,
    ])
    await expect(assembly.locator('[data-held="video"]')).toBeAttached()
    const video = assembly.locator('video')
    await expect(video).toHaveCount(1)
    const playing = await video.evaluate((one: HTMLVideoElement) => ({
      paused: one.paused,
      streams: one.srcObject instanceof MediaStream && one.srcObject.active,
    }))
    expect(playing).toEqual({ paused: false, streams: true })
  })

  await test.step('a new ticket knocks, once the page was touched', async () => {
    await expect(toggle(deviceEn.sound.locked)).toBeVisible()
    await assemblyRests(assembly).click()
    await expect(toggle(deviceEn.sound.on)).toBeVisible()
    expect(await tones(assembly)).toBe(0)
    await order(counterPage, 'Garden chicken', 1)
    await expect.poll(() => tones(assembly)).toBe(2)
  })

  await test.step('so does one that was handed over and comes back', async () => {
    await makeAndMark(assembly, '1A', assemblyRests(assembly))
    await job.lead.does({ type: 'handOver', ticket: 1, letter: 'A' })
    expect(await tones(assembly)).toBe(2)
    await job.lead.does({ type: 'remake', ticket: 1, letter: 'A' })
    await expect.poll(() => tones(assembly)).toBe(4)
  })

  await test.step('turned off it stays off, also after the page is loaded again', async () => {
    await toggle(deviceEn.sound.on).click()
    await expect(toggle(deviceEn.sound.off)).toBeVisible()
    await assembly.reload()
    await expect(toggle(deviceEn.sound.off)).toBeVisible()
    await assembly.getByRole('main').click({ position: { x: 5, y: 5 } })
    await order(counterPage, 'Garden chicken', 2)
    await expect(assembly.getByRole('button', { name: /2-\u2060A/ })).toBeVisible()
    expect(await tones(assembly)).toBe(0)
    await expect(toggle(deviceEn.sound.off)).toBeVisible()
  })
})
