import { describe, expect, test } from 'vitest'
import { areKnocks, areMany, devicesAt, freeName } from '#lib/access/at-places.ts'
import { codePlaces, codeSoFar, inFragment, signsToGo } from '#lib/access/code-entry.ts'
import type { AccessNow, ListedDevice } from '#lib/access/http.ts'
import { adultLacks, NOBODY, rulesMet } from '#lib/access/new-adult.ts'
import { mayOpen, standingOf } from '#lib/access/open-here.ts'
import { ROLES } from '#lib/service/roles.ts'

describe('a code while it is typed', () => {
  test('[JN1] is what was meant, however it is typed, in two groups of four', () => {
    expect(codeSoFar(' acde-3467 ')).toBe('ACDE3467')
    expect(codeSoFar('ac0O1Il')).toBe('AC')
    expect(codeSoFar('ACDE34679')).toBe('ACDE3467')
    expect(signsToGo(codeSoFar('ac'))).toBe(6)
    expect(codePlaces('ACDE3')).toEqual([
      ['A', 'C', 'D', 'E'],
      ['3', '', '', ''],
    ])
  })

  test('[JN1] an address that somebody made up is no code, and breaks no page', () => {
    expect(inFragment('#ACDE%2D3467')).toBe('ACDE-3467')
    expect(codeSoFar(inFragment('#%E0%A4%A'))).toBe('EA4A')
    expect(inFragment('#%')).toBe('%')
    expect(inFragment('')).toBe('')
  })
})

describe('a new adult while it is typed', () => {
  test('[JN2] each rule of a passphrase is said before it is broken, and met as it is typed', () => {
    expect(rulesMet('', [])).toEqual({ more: 8, isUncommon: false, isOwn: false })
    expect(rulesMet('kettle', [])).toMatchObject({ more: 2, isUncommon: false })
    expect(rulesMet('password1', [])).toMatchObject({ more: 0, isUncommon: false })
    expect(rulesMet('kettle lantern', ['kettle lantern'])).toMatchObject({ isOwn: false })
    expect(rulesMet('kettle lantern', ['walnut harbour'])).toEqual({
      more: 0,
      isUncommon: true,
      isOwn: true,
    })
  })

  test('[JN2] what is missing is said, the first of it', () => {
    const lead = { name: 'Mara', passphrase: 'walnut harbour' }
    expect(adultLacks(NOBODY, [])).toBe('no-name')
    expect(adultLacks({ name: ' mara ', passphrase: 'kettle lantern' }, [lead])).toBe('name-taken')
    expect(adultLacks({ name: 'Ines', passphrase: 'kettle' }, [lead])).toBe('too-short')
    expect(adultLacks({ name: 'Ines', passphrase: 'qwertyuiop' }, [lead])).toBe('too-common')
    expect(adultLacks({ name: 'Ines', passphrase: 'walnut harbour' }, [lead])).toBe(
      'same-passphrase',
    )
    expect(adultLacks({ name: 'Ines', passphrase: 'kettle lantern' }, [lead])).toBeNull()
  })
})

const device = (name: string, more: Partial<ListedDevice> = {}): ListedDevice => ({
  device: name,
  name,
  role: 'assembly',
  station: 's',
  joinedAt: 1,
  seenAt: 1,
  isHere: true,
  isYou: false,
  adult: null,
  ...more,
})

describe('devices along the line', () => {
  test('[JN3] are at the place of their role, those that are here first', () => {
    const list = [
      device('away', { isHere: false, joinedAt: 0 }),
      device('late', { joinedAt: 9 }),
      device('other', { role: 'counter' }),
      device('early', { joinedAt: 2 }),
    ]
    expect(devicesAt('assembly', list).map(({ name }) => name)).toEqual(['early', 'late', 'away'])
  })

  test('[JN3] the device that looks is here, whatever it holds open', () => {
    const [own] = devicesAt('assembly', [device('own', { isHere: false, isYou: true })])
    expect(own?.isHere).toBe(true)
  })

  test('[JN3] a tablet is given a name that none was tried with', () => {
    expect(freeName(['Otter', 'Heron'], ['Otter'], () => 0)).toBe('Heron')
    expect(freeName(['Otter', 'Heron'], ['Otter', 'Heron'], (count) => count - 1)).toBe('Heron')
  })

  test('[JN4] wrong tries are told where they are many, or somebody was sent away for them', () => {
    expect(areMany({ wrong: 10, addresses: 1, refused: 0 })).toBe(false)
    expect(areMany({ wrong: 11, addresses: 1, refused: 0 })).toBe(true)
    expect(areMany({ wrong: 10, addresses: 1, refused: 1 })).toBe(true)
    // Whoever only opened a screen tried no code.
    expect(areMany({ wrong: 0, addresses: 0, refused: 500 })).toBe(false)
    expect(areKnocks({ wrong: 0, addresses: 0, refused: 500 })).toBe(false)
    expect(areKnocks({ wrong: 0, addresses: 0, refused: 501 })).toBe(true)
  })
})

describe('what is open to a device', () => {
  const now = (more: Partial<AccessNow>): AccessNow => ({
    house: 'made',
    you: null,
    mayWalkDemo: false,
    line: null,
    page: 'own',
    demoIsOpen: false,
    stations: [],
    station: null,
    ...more,
  })
  const you = {
    device: 'd',
    name: 'Otter',
    role: 'counter',
    station: 's',
    adult: null,
    until: 0,
  } as const

  test('[JN5] is its own place and what is less; of a stranger nothing, in the demo all', () => {
    const open = (of: AccessNow | null) => ROLES.filter((role) => mayOpen(of, role))
    expect(open(null)).toEqual([])
    expect(open(now({}))).toEqual([])
    expect(open(now({ you }))).toEqual(['counter', 'pick-up'])
    expect(open(now({ mayWalkDemo: true }))).toEqual(ROLES)
    expect(open(now({ you, mayWalkDemo: true }))).toEqual(['counter', 'pick-up'])
  })

  test('[JN5] is said as it stands', () => {
    expect(standingOf(null)).toBe('looking')
    expect(standingOf(now({ you }))).toBe('in')
    expect(standingOf(now({}))).toBe('out')
    expect(standingOf(now({ mayWalkDemo: true }))).toBe('demo')
    expect(standingOf(now({ house: 'none', mayWalkDemo: true }))).toBe('demo-unmade')
    expect(standingOf(now({ house: 'none' }))).toBe('unmade')
  })
})
