import { describe, expect, test } from 'vitest'
import { ROLES } from '#lib/service/roles.ts'
import { ONLY_IN_CHARGE } from '#lib/spine/registry.ts'
import { HERE, IN_CHARGE } from '#tests/support/access-room.ts'
import { connectScreen, createSocketRoom } from '#tests/support/socket-room.ts'

const RIGHT = IN_CHARGE.passphrase
const WRONG = 'right of the grill'
const CORRECT = { type: 'correct', pan: 'pan-rice', amount: 0 } as const

const notTaken = (id: string, because: object) => ({ id, answer: 'not taken', because })

const createRoom = async (isMade = true) => {
  const room = await createSocketRoom()
  if (isMade) await room.make()
  return room
}

describe('a command with a passphrase', () => {
  test.each(ROLES)('[I8] that is right is the person in charge’s, from a %s', async (role) => {
    const { url, given } = await createRoom()
    const { give } = await connectScreen(url, role)
    expect(await give('pan', CORRECT, { passphrase: RIGHT })).toMatchObject({
      answer: 'accepted',
    })
    expect(given).toEqual([{ id: 'pan', by: 'in-charge', adult: expect.stringMatching(/^a-/) }])
  })

  test('[I8] without one, a device of the person in charge has the lead’s rights', async () => {
    const { url, given } = await createRoom()
    const { give } = await connectScreen(url, 'in-charge')
    expect(await give('pan', CORRECT)).toMatchObject({ answer: 'accepted' })
    expect(given).toEqual([{ id: 'pan', by: 'lead' }])
    expect(await give('on', { type: 'signOn' })).toEqual(
      notTaken('on', { code: 'role-may-not', role: 'lead', command: 'signOn' }),
    )
    expect(ONLY_IN_CHARGE).toContain('signOn')
    expect(given).toHaveLength(1)
  })

  test('[I9] that is wrong, or proves nothing, is not taken and stores nothing', async () => {
    const none = await createRoom(false)
    const early = await connectScreen(none.url, 'lead')
    expect(await early.give('pan', CORRECT, { passphrase: RIGHT })).toEqual(
      notTaken('pan', { code: 'no-passphrase' }),
    )
    expect(none.given).toEqual([])
    const { url, room, given } = await createRoom()
    const { give } = await connectScreen(url, 'lead')
    expect(await give('pan', CORRECT, { passphrase: WRONG })).toEqual(
      notTaken('pan', { code: 'wrong-passphrase' }),
    )
    expect(await give('pan', CORRECT, { passphrase: 'short' })).toEqual(
      notTaken('pan', { code: 'wrong-passphrase' }),
    )
    expect(given).toEqual([])
    expect(await room.ports.log.answerTo('s-lunch', 'pan')).toBeNull()
    expect(await give('pan', CORRECT, { passphrase: RIGHT })).toMatchObject({ answer: 'accepted' })
  })

  test('[I4][I9] after ten wrong tries of a device none is taken, over whichever connection; another’s is', async () => {
    const { url, given } = await createRoom()
    const [one, second, other] = await Promise.all([
      connectScreen(url, 'lead'),
      connectScreen(url, 'lead'),
      connectScreen(url, 'counter'),
    ])
    const codes: string[] = []
    for (let tried = 0; tried < 13; tried += 1) {
      const screen = tried % 2 === 0 ? one : second
      const answer = await screen.give(`try-${tried}`, CORRECT, { passphrase: WRONG })
      codes.push(answer.answer === 'not taken' ? answer.because.code : answer.answer)
    }
    expect(codes).toEqual([
      ...Array<string>(10).fill('wrong-passphrase'),
      ...Array<string>(3).fill('too-many-tries'),
    ])
    expect(await one.give('pan', CORRECT, { passphrase: RIGHT })).toEqual(
      notTaken('pan', { code: 'too-many-tries' }),
    )
    expect(given).toEqual([])
    expect(await one.give('pan', CORRECT)).toMatchObject({ answer: 'accepted' })
    const again = { ...CORRECT, pan: 'pan-pita' } as const
    expect(await other.give('other', again, { passphrase: RIGHT })).toMatchObject({
      answer: 'accepted',
    })
  })

  test('[I10] sent again, with another passphrase or none, is the same command', async () => {
    const { url, access } = await createRoom()
    const { give } = await connectScreen(url, 'lead')
    const first = await give('pan', CORRECT, { passphrase: RIGHT })
    const second = { name: 'Another adult', passphrase: WRONG, role: 'in-charge' } as const
    expect(await access.addAdult(HERE, { ...second, proof: RIGHT })).toEqual({ code: 'done' })
    expect(await give('pan', CORRECT, { passphrase: WRONG })).toEqual(first)
    expect(await give('pan', CORRECT)).toEqual(first)
  })

  test('[I10] is never heard of in the log or what the server writes of itself', async () => {
    const { url, room, logged, services } = await createRoom()
    const { give, heard } = await connectScreen(url, 'lead')
    await give('pan', CORRECT, { passphrase: RIGHT })
    await give('wrong', CORRECT, { passphrase: WRONG })
    await give('failing', { type: 'handOver', ticket: 1, letter: 'A' }, { passphrase: RIGHT })
    const all = JSON.stringify([
      await room.ports.log.read('s-lunch', 0),
      await room.ports.log.answerTo('s-lunch', 'pan'),
      services.current('alder-hall')?.state(),
      heard,
      logged,
      room.logged,
    ])
    expect(all).not.toContain(RIGHT)
    expect(all).not.toContain(WRONG)
  })

  test('[X12] that is still being proved when the server ends is answered as not taken', async () => {
    const room = await createRoom()
    const { give } = await connectScreen(room.url, 'lead')
    const { adults } = room.access
    const proving = adults.proveInCharge
    adults.proveInCharge = async (passphrase, from) => {
      room.stopTaking()
      return proving(passphrase, from)
    }
    expect(await give('pan', CORRECT, { passphrase: RIGHT })).toEqual(
      notTaken('pan', { code: 'closing' }),
    )
    expect(room.given).toEqual([])
  })
})
