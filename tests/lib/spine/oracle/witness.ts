/** Watches a service step by step, and says what isn't as it must be. */
import { isRunning } from '#lib/service/state.ts'
import { noteBegun } from '#tests/lib/spine/oracle/begun.ts'
import {
  droppedIsTold,
  holdsAreLifted,
  holdsEndSaid,
  holdsHaveCauses,
  madeIsntLifted,
  pansHold,
  toldStays,
} from '#tests/lib/spine/oracle/caused.ts'
import { fits, fitsWhenMadeAgain } from '#tests/lib/spine/oracle/fits.ts'
import { createOwed, listsStay, owe, unlisted } from '#tests/lib/spine/oracle/found.ts'
import { madeStays, makingStops, neverGood, shelfStays } from '#tests/lib/spine/oracle/gone.ts'
import { copiedLedger, createLedger, writeDown } from '#tests/lib/spine/oracle/ledger.ts'
import type { Law } from '#tests/lib/spine/oracle/seen.ts'
import type { Stepped, Taken } from '#tests/support/drive-history.ts'

const LAWS: Readonly<Record<string, Law>> = {
  fits,
  fitsWhenMadeAgain,
  holdsAreLifted,
  droppedIsTold,
  toldStays,
  madeIsntLifted,
  pansHold,
  holdsHaveCauses,
  holdsEndSaid,
  makingStops,
  madeStays,
  neverGood,
  shelfStays,
  listsStay,
}

export interface Broken {
  readonly law: string
  readonly problem: string
}

export interface Witness {
  /** The first thing that isn't as it must be; null where all is. */
  readonly watch: (step: Stepped | Taken) => Broken | null
}

export const createWitness = (): Witness => {
  const ledger = createLedger()
  const owed = createOwed()
  return {
    watch: (step) => {
      const { before, after, recorded, isStale } = step
      if ('refusal' in step && step.refusal?.code === 'fits-no-more')
        return { law: 'refused', problem: `${step.refusal.build} wasn't held, and fits no more` }
      const late = recorded.find(({ type }) => before.stage === 'closed' && type !== 'ticketPaid')
      if (late) return { law: 'closed', problem: `${late.type} after the close` }
      const isDue = recorded.some(({ due }) => due !== undefined)
      if (before.clockJump && isDue)
        return { law: 'clock', problem: 'something fell due by a clock that nobody confirmed' }
      const earlier = copiedLedger(ledger)
      writeDown(ledger, recorded, after)
      if (isRunning(after)) noteBegun(ledger, recorded, after)
      if (!isRunning(before) || !isRunning(after) || recorded.length === 0) return null
      const seen = { before, after, events: recorded, isStale, earlier, ledger }
      owe(owed, seen)
      for (const [law, look] of Object.entries(LAWS)) {
        const [problem] = look(seen)
        if (problem !== undefined) return { law, problem }
      }
      const [problem] = unlisted(owed, seen)
      return problem === undefined ? null : { law: 'listed', problem }
    },
  }
}
