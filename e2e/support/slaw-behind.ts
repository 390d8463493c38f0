/** Slaw is beside the cheddar: for a guest who keeps milk apart it comes out of its back-up pan. */
import type { Page } from '@playwright/test'
import { batchCommands, loadFields } from '#lib/spine/opening-commands.ts'
import { componentOf } from '#lib/station/find.ts'
import { itemRow, sendButton, tellNeed, ticketIsSent, turnAndAgree } from './hands.ts'
import type { Lead } from './job.ts'

/** What stands behind the line from now on: so many portions of slaw. */
export const standsBehind = async (
  { does, state, portions }: Lead,
  count: number,
): Promise<void> => {
  const { station, backups, batches, at: now } = state()
  const slaw = componentOf(station, 'slaw')
  if (backups.slaw !== undefined) await does({ type: 'setBackup', component: 'slaw', ready: false })
  const amount = portions('slaw', count)
  const batch = `behind-${Object.keys(batches).length}`
  for (const command of batchCommands(station, slaw, amount, { now, batch, isDated: true }))
    await does(command)
  await does({
    type: 'setBackup',
    component: 'slaw',
    ready: true,
    amount,
    ...loadFields(station, slaw, { now, batch, cleaned: true }),
  })
}

/** An order of garden chicken with milk kept apart, agreed to and sent. */
export const orderMilkApart = async (page: Page, number: number): Promise<void> => {
  await tellNeed(page, 'milk')
  await itemRow(page, 'Garden chicken').click()
  await turnAndAgree(page)
  await sendButton(page).click()
  await ticketIsSent(page, number)
}
