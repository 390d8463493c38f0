/** Garden chickens for guests who keep peanut away, sent by the lead where no screen is asked for it. */

import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import type { Handling } from '#lib/station/codes/codes.ts'
import { itemOf } from '#lib/station/find.ts'
import type { Lead } from './job.ts'

const NOT_IN = { placement: 'no', portions: 0, because: 'need' } as const

/** A garden chicken that goes without peanut as far as its guest told. */
export const gardenChicken = (lead: Lead, handling: Handling | null): BuildChoice => {
  const usual = usualChoice(itemOf(lead.state().station, 'garden-chicken'))
  if (handling === null) return usual
  const isApart = handling === 'keep-apart'
  return {
    ...usual,
    asked: 'needs',
    needs: [{ code: 'peanut', handling, reason: null }],
    agreed: isApart,
    parts: isApart ? { ...usual.parts, 'yogurt-sauce': NOT_IN } : usual.parts,
  }
}

/** A ticket of one build, up to where it is. */
export const stands = async (
  lead: Lead,
  ticket: number,
  handling: Handling | null,
  upTo: readonly ('start' | 'finish' | 'handOver')[],
): Promise<void> => {
  const at = { ticket, letter: 'A' }
  const builds = [gardenChicken(lead, handling)]
  await lead.does({ type: 'send', builds, paid: false, readBack: true })
  for (const type of upTo)
    await lead.does(type === 'start' ? { type, ...at, seen: 0, read: true } : { type, ...at })
}
