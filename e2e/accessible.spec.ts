import type { Page } from '@playwright/test'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

test('assembly: Space and Enter are the pedal, whatever was tapped last', async ({ see, play }) => {
  await play('waiting')
  const page = await see(view('assembly, waiting'))
  const pedal = async (key: 'Space' | 'Enter', shown: string): Promise<void> => {
    await expect(async () => {
      await page.keyboard.press(key)
      await expect(page.getByRole('button', { name: shown })).toBeVisible({ timeout: 700 })
    }).toPass()
  }
  await pedal('Space', 'Made and marked')
  await pedal('Enter', 'Start 1-\u2060B')
  await page.getByRole('button', { name: 'Show 2-\u2060A' }).click()
  await expect(page.getByRole('button', { name: 'Start 2-\u2060A' })).toBeVisible()
  await pedal('Space', 'Made and marked')
  await play('quiet')
})

test('with reduced motion nothing moves; without, what is in a pan does', async ({
  see,
  play,
  server,
}) => {
  const calm = view('pans, calm')
  const counting = async (reducedMotion: 'reduce' | 'no-preference'): Promise<Page> => {
    const page = await see(calm, { reducedMotion })
    await page.evaluate(() => {
      document.documentElement.dataset.moves = '0'
      const count = () => {
        const { dataset } = document.documentElement
        dataset.moves = String(Number(dataset.moves) + 1)
      }
      for (const event of ['transitionrun', 'animationstart']) addEventListener(event, count, true)
    })
    return page
  }
  const still = await counting('reduce')
  const moving = await counting('no-preference')
  const { client, close } = connectCrew(server.url, 'lead')
  await whenView(client, ({ link, position }) => link === 'live' && position > 0)
  await client.send({ type: 'correct', pan: 'pan-pita', amount: 7 })
  close()
  for (const page of [still, moving])
    await expect(page.getByRole('button', { name: 'Pita: 7 portions left' })).toBeVisible()
  await expect(moving.locator('html')).not.toHaveAttribute('data-moves', '0')
  await expect(still.locator('html')).toHaveAttribute('data-moves', '0')
  expect(await still.evaluate(() => document.getAnimations().length)).toBe(0)
  await play('quiet')
})
