import type { Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import type { Command } from '#lib/spine/registry.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import { finishButton, startButton, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

type Choice = Extract<Command, { type: 'change' }>['to']

const withoutMilk: Choice = {
  item: 'bean-and-pepper',
  base: 'pita',
  parts: {
    cheddar: { placement: 'no', portions: 0, because: 'asked' },
    'yogurt-sauce': { placement: 'no', portions: 0, because: 'asked' },
    almonds: { placement: 'no', portions: 0, because: 'asked' },
  },
  asked: 'none',
  needs: [],
  agreed: false,
  caution: null,
}
const milkApart: Choice = {
  ...withoutMilk,
  asked: 'needs',
  needs: [{ code: 'milk', handling: 'keep-apart', reason: 'allergy' }],
  agreed: true,
}

/** From now on what the server says to the page can be kept from it for a while. */
const delayable = async (page: Page) => {
  let late: (() => void)[] | null = null
  await page.routeWebSocket(/socket\.io/, (socket) => {
    socket.connectToServer().onMessage((message) => {
      const pass = () => socket.send(message)
      if (late) late.push(pass)
      else pass()
    })
  })
  await page.reload()
  return {
    keepBack: () => {
      late = []
    },
    letThrough: () => {
      const passes = late ?? []
      late = null
      for (const pass of passes) pass()
    },
  }
}

test('a build that is to be kept apart since a moment ago isn’t started unread', async ({
  job,
}) => {
  const assembly = await job.open('/assembly')
  const server = await delayable(assembly)
  const stateOf1A = () => job.lead.state().tickets.t1?.builds[0]?.state
  const at = { ticket: 1, letter: 'A' } as const

  await job.signOn()
  await job.lead.does({ type: 'send', builds: [withoutMilk], paid: false, readBack: true })
  await expect(startButton(assembly, '1A')).toBeEnabled()
  server.keepBack()
  await job.lead.does({ type: 'change', ...at, to: milkApart, readBack: true })
  const sending = assembly.getByRole('button', { name: assemblyEn.sending, exact: true })
  await tapUntil(startButton(assembly, '1A'), sending)
  server.letThrough()

  const refused = sayRefusal({ code: 'changed-since', build: '1A' }, (id) => id)
  await expect(assembly.getByRole('status').filter({ hasText: refused })).toBeVisible()
  const wasRead = assembly.getByRole('button', { name: assemblyEn.wasRead, exact: true })
  await expect(wasRead).toBeVisible()
  expect(stateOf1A()).toBe('waiting')
  expect(await job.lead.answerTo({ type: 'start', ...at })).toMatchObject({
    answer: 'refused',
    refusal: { code: 'handling-not-read', build: '1A' },
  })

  await tapUntil(wasRead, startButton(assembly, '1A'))
  await tapUntil(startButton(assembly, '1A'), finishButton(assembly))
  await expect.poll(stateOf1A).toBe('making')
  const started = (await job.log()).filter(({ type }) => type === 'buildStarted')
  expect(started).toHaveLength(1)
})
