import fc from 'fast-check'
import stringify from 'safe-stable-stringify'
import { describe, expect, it } from 'vitest'
import type { CrewRole } from '#lib/access/seen/classes.ts'
import { projectState } from '#lib/access/seen/project.ts'
import { tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { guestsToFind, heldBuilds, unreadLabels } from '#lib/rooms/care/facts/first-of-all.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { vesselPictures } from '#lib/rooms/food/views/vessels.ts'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { waitingRemakes } from '#lib/rooms/making/views/waiting-remakes.ts'
import {
  handedOverLately,
  heldNow,
  panMarks,
  shortNow,
  sumOfTicket,
  ticketsToChange,
} from '#lib/rooms/orders/views/tickets-to-change.ts'
import { panPictures, queueOf } from '#lib/rooms/pans/facts/pans.ts'
import { toDos } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { handOverView } from '#lib/rooms/shelf/views/hand-over.ts'
import { standsOf } from '#lib/rooms/shelf/views/stands.ts'
import { unpaidList } from '#lib/rooms/shelf/views/unpaid-list.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { living } from '#tests/support/live-history.ts'
import { wholeService } from '#tests/support/moves.ts'
import { stretched } from '#tests/support/stretch.ts'

const pans = (state: RunningState, now: number): readonly unknown[] => [
  panPictures(state),
  vesselPictures(state, now),
  batchPictures(state, now),
]

/** All that a screen draws of a state. */
const DRAWN: Readonly<Record<CrewRole, (state: RunningState, now: number) => readonly unknown[]>> =
  {
    assembly: (state) => [
      assemblyView(state, null, null),
      ...openBuilds(state)
        .slice(0, 3)
        .map(({ ticket, build }) => assemblyView(state, `${ticket.number}${build.letter}`, 'left')),
      stoppedBuilds(state),
      waitingRemakes(state),
    ],
    'hand-over': (state, now) => {
      const view = handOverView(state, now)
      return [view, standsOf(state, view.shelf, now), unpaidList(state)]
    },
    counter: (state, now) => [
      ticketsToChange(state),
      handedOverLately(state),
      heldNow(state),
      shortNow(state),
      openBuilds(state).map(({ build }) => panMarks(state, build)),
      openBuilds(state).map(({ ticket }) => sumOfTicket(ticket)),
      ...pans(state, now),
    ],
    lead: (state, now) => [
      tasksOf(state, null, now),
      toDos(state),
      queueOf(state),
      heldBuilds(state),
      guestsToFind(state),
      unreadLabels(state.station),
      unpaidList(state),
      ...pans(state, now),
    ],
    'in-charge': (state, now) => [tasksOf(state, null, now), toDos(state), ...pans(state, now)],
  }

/** Needs that go along with a build still say their reasons in what the whole state draws. */
const withoutReasons = (_: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'handling' in value && 'reason' in value
    ? { ...value, reason: null }
    : value

const drawnAs = (drawn: unknown): string => stringify(drawn, withoutReasons) ?? ''

describe('a screen', () => {
  it('[V12] draws the same of what its role is sent as of everything', { timeout: 120_000 }, () => {
    let drawn = 0
    const tried = new Set<string>()
    for (let seed = 900; seed < 900 + stretched(5); seed += 1) {
      const [moves = []] = fc.sample(wholeService, { seed, numRuns: 1, unbiased: true })
      let acts = 0
      for (const { drive } of living(moves)) {
        acts += 1
        const state = drive.state()
        if (acts % 40 !== 0 || !isRunning(state)) continue
        for (const [role, draw] of Object.entries(DRAWN) as [CrewRole, typeof DRAWN.lead][]) {
          const sent = projectState(role, state)
          if (!isRunning(sent)) throw new Error('a service that runs is sent')
          const theirs = draw(sent, state.at)
          const all = draw(state, state.at)
          expect(`${role} ${drawnAs(theirs)}`).toBe(`${role} ${drawnAs(all)}`)
          drawn += 1
          if (JSON.stringify(theirs).includes('keep-apart')) tried.add(role)
        }
      }
    }
    expect(drawn).toBeGreaterThan(stretched(5) * 5)
    expect([...tried]).toContain('counter')
  })
})
