import { describe, expect, onTestFinished, test } from 'vitest'
import { isRunning } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { Contact } from '#lib/station/station-document.ts'
import type { Rail } from '#server/rail/rail.ts'
import { createGatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { openLabelHouse, SOUP } from '#tests/support/label-house.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { railStation } from '#tests/support/orders.ts'
import { choose, needs } from '#tests/support/service.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const WRAPS = railStation.id
const OWN = railStation.contacts ?? []
const FRYER: Contact = { id: 'fryer', kind: 'fryer', components: ['cheddar', 'chicken'] }

const withoutMilk: Command = {
  type: 'send',
  builds: [
    choose(
      'garden-chicken',
      { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', slaw: 'no' },
      { base: 'rice', ...needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }) },
    ),
  ],
  paid: false,
  readBack: true,
}

const createHouse = async (log: RailLog = createMemoryLog()) => {
  const path = temporaryFolder()
  const open = async () => {
    const house = await openLabelHouse(path, log)
    onTestFinished(() => house.close())
    /** Keeps a revision, as a publish does until it is cut short before the services. */
    const put = async (contacts: readonly Contact[] | null, neverTouched = false) => {
      const revision = await house.known.put({
        ...railStation,
        contacts: contacts && [...contacts],
      })
      house.publications.keep({ station: WRAPS, revision, at: 1, adult: 'a-1', neverTouched })
    }
    return {
      ...house,
      opened: async (...wanted: Parameters<typeof house.opened>) => {
        const rail = await house.opened(...wanted)
        await rail.submit('on', { type: 'signOn' }, 'in-charge', 'a-1')
        return rail
      },
      put,
      publish: async (...wanted: Parameters<typeof put>) => {
        await put(...wanted)
        await house.contacts.published(WRAPS)
      },
    }
  }
  return { ...(await open()), log, again: open }
}

const runningOf = (rail: Pick<Rail, 'state'>) => {
  const state = rail.state()
  if (!isRunning(state)) throw new Error('no service')
  return state
}
const accepted = { answer: 'accepted' }
const holdsOf = (rail: Pick<Rail, 'state'>) =>
  openBuilds(runningOf(rail)).map(({ build }) => build.hold?.reason ?? null)
const kindsOf = (rail: Pick<Rail, 'state'>) =>
  runningOf(rail).station.contacts?.map(({ id }) => id) ?? null

describe('what touches what, in a published revision', () => {
  test('[R41] counts in the open service of its station at once: what waits is held, what was given out is found', async () => {
    const house = await createHouse()
    const [wraps, soup] = [await house.opened(WRAPS), await house.opened(SOUP.id)]
    for (const id of ['one', 'two'])
      expect(await wraps.submit(id, withoutMilk, 'counter')).toMatchObject(accepted)
    for (const type of ['start', 'finish', 'handOver'] as const)
      await wraps.submit(
        type,
        {
          type,
          ticket: 1,
          letter: 'A',
          ...(type === 'start' ? { read: true, version: 0 } : {}),
        } as Command,
        'in-charge',
      )
    expect([wraps.state().handedOver, holdsOf(wraps)]).toEqual([1, [null]])
    await house.publish([...OWN, FRYER])
    expect(holdsOf(wraps)).toEqual(['contact'])
    expect(Object.values(wraps.state().toFind)).toMatchObject([
      { ticket: 1, letter: 'A', reason: 'contact' },
    ])
    expect(kindsOf(wraps)).toContain('fryer')
    expect(await wraps.submit('late', withoutMilk, 'counter')).toMatchObject({ answer: 'refused' })
    // It is served from its own line all the same, and the other station's knows nothing of it.
    expect([wraps.state().revision, kindsOf(soup)]).toEqual([1, OWN.map(({ id }) => id)])
  })

  test('[R42] that no longer touches goes on counting until the close', async () => {
    const house = await createHouse()
    await house.publish([...OWN, FRYER])
    const wraps = await house.opened(WRAPS)
    const before = wraps.position()
    await house.publish(OWN)
    expect([wraps.position(), kindsOf(wraps)]).toEqual([
      before,
      [...OWN, FRYER].map(({ id }) => id),
    ])
    expect(await wraps.submit('one', withoutMilk, 'counter')).toMatchObject({ answer: 'refused' })
    await wraps.submit('close', { type: 'close' }, 'lead')
    const next = await house.opened(WRAPS, 's-next')
    expect(await next.submit('one', withoutMilk, 'counter')).toMatchObject(accepted)
  })

  test('[R42] that never touched, by the word of who is in charge, is apart at once, and what waits goes on', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    await wraps.submit('one', withoutMilk, 'counter')
    await house.publish([...OWN, FRYER])
    expect(holdsOf(wraps)).toEqual(['contact'])
    await house.publish(OWN, true)
    expect([holdsOf(wraps), kindsOf(wraps)]).toEqual([[null], OWN.map(({ id }) => id)])
  })

  test('[R42] that another revision took away without that word goes on counting, whatever is said of a later one', async () => {
    const house = await createHouse()
    const board: Contact = { id: 'board', kind: 'board', components: ['cheddar', 'beans'] }
    await house.publish([...OWN, FRYER, board])
    const wraps = await house.opened(WRAPS)
    await house.publish([...OWN, board])
    await house.publish(OWN, true)
    expect(kindsOf(wraps)).toEqual([...OWN, FRYER].map(({ id }) => id))
  })

  test('[R42] that nobody has confirmed is unknown, and ends by that word only', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    await wraps.submit('one', withoutMilk, 'counter')
    await house.publish(null)
    expect([holdsOf(wraps), kindsOf(wraps)]).toEqual([['contact'], null])
    await house.publish(OWN)
    expect(kindsOf(wraps)).toBeNull()
    await house.publish(OWN, true)
    expect([holdsOf(wraps), kindsOf(wraps)]).toEqual([[null], OWN.map(({ id }) => id)])
  })

  test('[R41] cut short before the service reaches it at the next start, with the word that was said', async () => {
    for (const [contacts, never, kinds] of [
      [[...OWN, FRYER], false, [...OWN, FRYER]],
      [OWN.slice(1), false, OWN],
      [OWN.slice(1), true, OWN.slice(1)],
    ] as const) {
      const house = await createHouse()
      await house.opened(WRAPS)
      await house.put(contacts, never)
      house.close()
      const again = await house.again()
      await again.settled()
      const rail = again.services.current(WRAPS)
      if (!rail) throw new Error('no service')
      expect(kindsOf(rail)?.toSorted()).toEqual(kinds.map(({ id }) => id).toSorted())
      // A second start has nothing to add.
      const position = rail.position()
      again.close()
      const third = await house.again()
      await third.settled()
      expect(third.services.current(WRAPS)?.position()).toBe(position)
    }
  })

  test('[R41] a service that opens meanwhile is opened on the new revision, by a guard of the append', async () => {
    const gated = createGatedLog()
    const house = await createHouse(gated.log)
    gated.overtake(() => house.publish([...OWN, FRYER]))
    const rail = await house.opened(WRAPS)
    expect([rail.state().revision, kindsOf(rail)]).toEqual([2, [...OWN, FRYER].map(({ id }) => id)])
    const openings = gated.attempts.filter(({ entries }) => entries[0]?.type === 'serviceOpened')
    expect(openings).toHaveLength(2)
  })

  test('[R41] a closed service takes none', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    await wraps.submit('close', { type: 'close' }, 'lead')
    const before = wraps.position()
    await house.publish([...OWN, FRYER])
    expect([wraps.position(), house.faults]).toEqual([before, []])
  })
})
