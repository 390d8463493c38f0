import { describe, expect, test } from 'vitest'
import { MOST_WRONG } from '#lib/access/tries.ts'
import { createAdults } from '#server/access/adults.ts'
import { createTries } from '#server/access/tries.ts'
import { accessRoom, from, IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'

const NEW = 'walnut harbour mitten'
const MORE = { name: 'Second adult', passphrase: 'kettle and anchor' } as const

/** A made house; the lead's device, and one more that each adult signed on at. */
const room = async () => {
  const one = accessRoom()
  const { access } = one
  const lead = from('10.0.0.2', await one.make())
  const signOn = async (adult: { readonly name: string; readonly passphrase: string }) => {
    const on = await access.signOn(from('10.0.0.5'), adult)
    if (on.code !== 'done') throw new Error(on.code)
    return from('10.0.0.5', on.token)
  }
  const idOf = (name: string) => one.house.adults().find((adult) => adult.name === name)?.id ?? ''
  const gone: string[] = []
  access.devices.onGone((device) => gone.push(device))
  const add = (role: 'lead' | 'in-charge', adult: typeof MORE | typeof LEAD = MORE) =>
    access.addAdult(lead, { ...adult, role, proof: IN_CHARGE.passphrase })
  const change = (asked: object = {}, caller = lead) =>
    access.changePassphrase(caller, {
      name: LEAD.name,
      before: LEAD.passphrase,
      passphrase: NEW,
      ...asked,
    })
  const takeOut = (name: string, proof = IN_CHARGE.passphrase) =>
    access.removeAdult(from('10.0.0.9', one.token('lead')), { adult: idOf(name), proof })
  return { ...one, lead, signOn, idOf, gone, add, change, takeOut }
}

describe('a passphrase', () => {
  test('[D24] is changed by the one of before, which opens nothing from then on', async () => {
    const { access, change, signOn } = await room()
    expect(await change({ before: IN_CHARGE.passphrase })).toEqual({ code: 'not-it' })
    expect(await change({ name: 'Nobody' })).toEqual({ code: 'not-it' })
    expect(await change()).toEqual({ code: 'done' })
    expect(await access.signOn(from('10.0.0.5'), LEAD)).toEqual({ code: 'not-it' })
    await signOn({ name: LEAD.name, passphrase: NEW })
  })

  test('[D24] that is changed signs off every other device of that adult, and no one else’s', async () => {
    const { access, change, signOn, lead, token, gone } = await room()
    const [other, third] = [await signOn(LEAD), await signOn(LEAD)]
    const inCharge = await signOn(IN_CHARGE)
    const ids = [other, third].map((caller) => access.deviceOf(caller)?.id ?? '')
    await change()
    expect([...gone].sort()).toEqual([...ids].sort())
    for (const caller of [other, third])
      expect(access.admit(caller, { role: 'lead' })).toEqual({ refusal: 'not-joined' })
    for (const caller of [lead, inCharge, from('10.0.0.9', token('lead'))])
      expect(access.deviceOf(caller)).not.toBeNull()
    const tablet = from('10.0.0.9', token('counter'))
    expect(await change({ before: NEW, passphrase: 'lantern in the reeds' }, tablet)).toEqual({
      code: 'done',
    })
    expect(access.deviceOf(lead)).toBeNull()
    expect(access.deviceOf(tablet)).not.toBeNull()
  })

  test('[D24] that is changed voids the codes that stand open', async () => {
    const { access, change, lead } = await room()
    const by = access.deviceOf(lead)
    const given = by ? access.code(by, { role: 'lead' }) : null
    if (given?.code !== 'done') throw new Error('no code')
    await change()
    const join = { code: given.typed, name: 'Tablet' }
    expect(await access.join(from('10.0.0.7'), join)).toEqual({ code: 'not-it' })
  })

  test('[D4][D24] new, is none that is tried first, too short, its owner’s name, another’s or the same', async () => {
    const { change, signOn } = await room()
    const wrong = [
      ['seven 7', 'too-short'],
      ['password1', 'too-common'],
      [LEAD.name, 'too-common'],
      [IN_CHARGE.passphrase, 'same-passphrase'],
      [LEAD.passphrase, 'same-passphrase'],
    ]
    for (const [passphrase, code] of wrong) expect(await change({ passphrase })).toEqual({ code })
    await signOn(LEAD)
  })

  test('[D24] of before proves nothing, also where it is being compared', async () => {
    const { access, change, token } = await room()
    const by = { device: 'd-counter', address: '10.0.0.9' }
    expect(access.deviceOf(from(by.address, token('counter')))?.id).toBe(by.device)
    const mine = { name: IN_CHARGE.name, before: IN_CHARGE.passphrase }
    const [changed, again, tried, on] = await Promise.all([
      change(mine),
      change({ ...mine, passphrase: 'lantern in the reeds' }),
      access.adults.proveInCharge(IN_CHARGE.passphrase, by).then(async (before) => ({
        before,
        after: await access.adults.proveInCharge(IN_CHARGE.passphrase, by),
      })),
      access.signOn(from('10.0.0.5'), { ...IN_CHARGE }),
    ])
    expect([changed.code, again.code].sort()).toEqual(['done', 'not-it'])
    // What was proved before the change holds; its device doesn't.
    expect(tried.after.code === 'right' && tried.before.code !== 'right').toBe(false)
    if (on.code === 'done') expect(access.deviceOf(from('10.0.0.5', on.token))).toBeNull()
    expect((await access.adults.proveInCharge(IN_CHARGE.passphrase, by)).code).toBe(
      'wrong-passphrase',
    )
  })

  test('[D24][D25] that is being compared as its adult goes proves nothing', async () => {
    const { access, add, house, idOf } = await room()
    await add('in-charge')
    const by = { device: 'd-counter', address: '10.0.0.9' }
    const trying = access.adults.proveInCharge(MORE.passphrase, by)
    // No comparison ends before these do.
    for (let turn = 0; turn < 50; turn += 1) await null
    house.removeAdult(idOf(MORE.name), 0)
    expect((await trying).code).toBe('wrong-passphrase')
  })

  test('[D12][D24] of before, guessed, is counted as where one signs on', async () => {
    const { change } = await room()
    for (let tried = 0; tried < MOST_WRONG; tried += 1)
      expect(await change({ before: 'a guess of the old' })).toEqual({ code: 'not-it' })
    expect(await change()).toMatchObject({ code: 'too-many-tries' })
  })

  test('[D26] of somebody else isn’t found by taking guesses for one’s own', async () => {
    const { change, access } = await room()
    let before = LEAD.passphrase
    let guesses = 0
    for (; guesses < 3 * MOST_WRONG; guesses += 1) {
      const passphrase = `a guess of mine ${'abcdefghijklmnopqrstuvwxyzABCD'[guesses]}`
      const { code } = await change({ before, passphrase })
      if (code !== 'done') break
      before = passphrase
    }
    expect(guesses).toBe(MOST_WRONG)
    expect(await change({ before, passphrase: IN_CHARGE.passphrase })).toMatchObject({
      code: 'too-many-tries',
    })
    const told = await access.signOn(from('10.0.0.5'), { ...LEAD, passphrase: before })
    expect(told.code).toBe('done')
  })

  test('[D26] nor by adding adults and taking them out', async () => {
    const { add, takeOut } = await room()
    let guesses = 0
    for (; guesses < 3 * MOST_WRONG; guesses += 1) {
      const passphrase = `a guess of mine ${'abcdefghijklmnopqrstuvwxyzABCD'[guesses]}`
      if ((await add('lead', { ...LEAD, name: 'Guess', passphrase })).code !== 'done') break
      await takeOut('Guess')
    }
    expect(guesses).toBe(MOST_WRONG)
  })

  test('[D15] by a device that is removed meanwhile isn’t changed', async () => {
    const { access, change, signOn, token } = await room()
    const tablet = from('10.0.0.9', token('counter'))
    const changing = change({}, tablet)
    access.remove('d-counter')
    expect(await changing).toEqual({ code: 'not-it' })
    await signOn(LEAD)
  })

  test('[D15] is kept for no device that goes once the one of before was right', async () => {
    const { house } = await room()
    const [adult] = house.adults()
    if (!adult) throw new Error('no adult')
    const adults = createAdults({ house, tries: createTries(), isIn: () => false, cost: CHEAP })
    const by = { device: 'd-counter', address: '10.0.0.9' }
    const kept: unknown[] = []
    const keep = (one: unknown) => kept.push(one) > 0
    expect(await adults.change(adult, NEW, by, keep)).toEqual({ code: 'not-it' })
    expect(kept).toEqual([])
  })
})

describe('an adult', () => {
  test('[D25] is taken out by the proof of somebody in charge, with all devices of theirs', async () => {
    const { access, add, takeOut, signOn, house, gone } = await room()
    expect(await add('in-charge')).toEqual({ code: 'done' })
    const theirs = await signOn(MORE)
    const id = access.deviceOf(theirs)?.id
    expect(await takeOut(MORE.name, LEAD.passphrase)).toEqual({ code: 'not-it' })
    expect(await takeOut('Nobody')).toEqual({ code: 'not-it' })
    expect(access.deviceOf(theirs)).not.toBeNull()
    expect(await takeOut(MORE.name)).toEqual({ code: 'done' })
    expect(gone).toEqual([id])
    expect(access.admit(theirs, { role: 'in-charge' })).toEqual({ refusal: 'removed' })
    expect(house.adults().map(({ name }) => name)).toEqual([LEAD.name, IN_CHARGE.name])
    expect(await access.signOn(from('10.0.0.5'), MORE)).toEqual({ code: 'not-it' })
    const by = { device: 'd-counter', address: '10.0.0.9' }
    expect((await access.adults.proveInCharge(MORE.passphrase, by)).code).toBe('wrong-passphrase')
  })

  test('[D25] who is the last that leads, or the last in charge, stays', async () => {
    const { add, takeOut, house } = await room()
    expect(await takeOut(LEAD.name)).toEqual({ code: 'last-one' })
    expect(await takeOut(IN_CHARGE.name)).toEqual({ code: 'last-one' })
    await add('lead')
    expect(await takeOut(IN_CHARGE.name)).toEqual({ code: 'last-one' })
    expect(await takeOut(LEAD.name)).toEqual({ code: 'done' })
    expect(await takeOut(MORE.name)).toEqual({ code: 'last-one' })
    expect(house.adults()).toHaveLength(2)
  })

  test('[D25] of two that are taken out at once, one stays where they are the last', async () => {
    const { add, takeOut, house } = await room()
    await add('lead')
    const codes = await Promise.all([takeOut(LEAD.name), takeOut(MORE.name)])
    expect(codes.map(({ code }) => code).sort()).toEqual(['done', 'last-one'])
    expect(house.adults()).toHaveLength(2)
  })

  test('[D25] whose passphrase is being compared proves nothing once taken out', async () => {
    const { access, add, takeOut } = await room()
    await add('in-charge')
    const [out, on] = await Promise.all([takeOut(MORE.name), access.signOn(from('10.0.0.5'), MORE)])
    expect(out).toEqual({ code: 'done' })
    if (on.code === 'done') expect(access.deviceOf(from('10.0.0.5', on.token))).toBeNull()
    else expect(on).toEqual({ code: 'not-it' })
  })
})
