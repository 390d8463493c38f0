import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { NotTaken, NotTakenCode, Refusal, RefusalCode, Unknown } from '#lib/service/refusal.ts'
import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { sayNotTaken, sayRefusal } from '#lib/words/refusals-en.ts'
import { needName } from '#lib/words/service-en.ts'
import { demoStation } from '#tests/support/service.ts'
import { filesBelow, root } from '#tests/support/source-tree.ts'

type Of<All extends { code: string }> = {
  readonly [Code in All['code']]: Extract<All, { code: Code }>
}

/** One of each; a new code doesn't compile before it stands here. */
const refusals: Of<Refusal> = {
  'service-not-open': { code: 'service-not-open' },
  'service-already-open': { code: 'service-already-open' },
  'service-closed': { code: 'service-closed' },
  unknown: { code: 'unknown', what: 'item', id: 'kelp-roll' },
  'not-of-this-item': { code: 'not-of-this-item', item: 'harbor-tuna', component: 'chicken' },
  'base-missing': { code: 'base-missing', item: 'harbor-tuna' },
  'no-cups': { code: 'no-cups', component: 'cheddar' },
  'cannot-leave-out': { code: 'cannot-leave-out', item: 'harbor-tuna', component: 'tuna' },
  'nothing-in-it': { code: 'nothing-in-it' },
  'too-many-builds': { code: 'too-many-builds', most: 8 },
  'absurd-portions': { code: 'absurd-portions', component: 'slaw', most: 4 },
  'absurd-amount': { code: 'absurd-amount', pan: 'pan-pita', most: 500 },
  'sold-out': { code: 'sold-out', component: 'cheddar' },
  'not-selling': { code: 'not-selling', what: 'item', id: 'harbor-tuna' },
  lacks: {
    code: 'lacks',
    lacks: [
      { letter: 'A', code: 'sold-out', component: 'rice' },
      { letter: 'B', code: 'kept', component: 'tuna', for: ['harbor-tuna'] },
    ],
  },
  'not-asked': { code: 'not-asked' },
  'not-sure': { code: 'not-sure' },
  'need-dropped': { code: 'need-dropped', build: '21A', need: 'milk' },
  contains: { code: 'contains', component: 'cheddar', need: 'milk' },
  'may-contain': { code: 'may-contain', component: 'pita', need: 'sesame' },
  'not-listed': { code: 'not-listed', component: 'tuna', need: 'milk' },
  'unknown-declaration': { code: 'unknown-declaration', component: 'tuna', need: 'soy' },
  'contact-not-known': { code: 'contact-not-known', component: 'rice', need: 'milk' },
  'shared-contact': {
    code: 'shared-contact',
    component: 'slaw',
    need: 'milk',
    touches: 'cheddar',
  },
  caution: {
    code: 'caution',
    component: 'slaw',
    need: 'milk',
    why: 'contact',
    touches: 'cheddar',
    reached: ['cheddar'],
  },
  'nothing-to-accept': { code: 'nothing-to-accept' },
  'no-one-in-charge': { code: 'no-one-in-charge' },
  'not-in-charge': { code: 'not-in-charge' },
  'not-lead': { code: 'not-lead' },
  'label-contradicts': { code: 'label-contradicts', ingredient: 'cheddar' },
  'needs-not-checked': { code: 'needs-not-checked', why: 'failed' },
  'not-read-back': { code: 'not-read-back' },
  'said-changed': { code: 'said-changed', letter: 'A' },
  'not-agreed': { code: 'not-agreed', letter: 'A' },
  'fits-no-more': { code: 'fits-no-more', build: '21A' },
  'build-held': { code: 'build-held', build: '21A', reason: 'label' },
  'pan-soiled': { code: 'pan-soiled', pan: 'pan-pita' },
  'made-food-is-waste': { code: 'made-food-is-waste', build: '21A' },
  'thrown-out-whole': { code: 'thrown-out-whole', build: '21A', because: 'wrong-scoop' },
  'not-in-build': { code: 'not-in-build', build: '21A', component: 'cheddar' },
  'food-in-it-unclear': { code: 'food-in-it-unclear', build: '21A' },
  'cup-stays-out': { code: 'cup-stays-out', build: '21A', component: 'yogurt-sauce' },
  'mixed-up-with-nothing': { code: 'mixed-up-with-nothing' },
  'wrong-state': { code: 'wrong-state', build: '21A', state: 'handed-over' },
  'made-elsewhere': { code: 'made-elsewhere', build: '21A', screen: 'left' },
  'build-stopped': { code: 'build-stopped', build: '21A' },
  'nothing-to-acknowledge': { code: 'nothing-to-acknowledge', build: '21A' },
  'changed-since': { code: 'changed-since', build: '21A' },
  'handling-not-read': { code: 'handling-not-read', build: '21A' },
  short: { code: 'short', build: '21A', component: 'slaw' },
  'pan-not-empty': { code: 'pan-not-empty', pan: 'pan-pita' },
  'already-so': { code: 'already-so' },
  kept: { code: 'kept', component: 'tuna', for: ['harbor-tuna', 'kept-apart', 'vegan', 'milk'] },
  'closes-before-now': { code: 'closes-before-now', time: '09:00' },
  'say-what-was-put-in': { code: 'say-what-was-put-in', pan: 'pan-pita' },
  'reading-unclear': { code: 'reading-unclear', pan: 'pan-pita' },
  'no-tare': { code: 'no-tare', pan: 'pan-rice' },
  'not-by-weight': { code: 'not-by-weight', pan: 'pan-pita' },
  'no-scoop': { code: 'no-scoop', component: 'pita' },
  'scoop-carries': {
    code: 'scoop-carries',
    tool: 'spare-20',
    component: 'rice',
    need: 'fish',
    from: 'tuna',
    into: 'rice',
  },
  'too-many-measures': { code: 'too-many-measures', most: 4 },
  'scoop-far-off': { code: 'scoop-far-off', component: 'rice', percent: -20 },
  'no-scoop-fits': { code: 'no-scoop-fits', component: 'rice' },
  'not-short': { code: 'not-short', build: '21A' },
  'other-component': { code: 'other-component', component: 'rice', batch: 'b1' },
  'not-said-bought': { code: 'not-said-bought', component: 'cheddar', lacks: 'bought' },
  'no-batch': { code: 'no-batch', component: 'rice' },
  'older-batch-first': { code: 'older-batch-first', batch: 'b1' },
  'more-than-batch': { code: 'more-than-batch', batch: 'b1', most: 900_000 },
  'not-read-here': { code: 'not-read-here' },
  'nothing-there': { code: 'nothing-there', id: 'pan-rice' },
  'not-initialled': { code: 'not-initialled' },
  'reading-lacks': { code: 'reading-lacks', lack: 'no-probe' },
  'reading-asked': {
    code: 'reading-asked',
    question: { code: 'did-you-mean', scale: 'F', must: true },
    read: { tenths: 1650, scale: 'C' },
  },
  'wrong-moment': { code: 'wrong-moment', problem: { code: 'in-the-future', byMs: 60_000 } },
  'wrong-date': { code: 'wrong-date', problem: { code: 'thawed-before-frozen' } },
  'wrong-amount': {
    code: 'wrong-amount',
    pan: 'pan-rice',
    problem: { code: 'below-tare', tareMg: 1_180_000 },
  },
  'wrong-place': {
    code: 'wrong-place',
    pan: 'pan-rice',
    problem: { code: 'does-not-fit', well: 'cold' },
  },
  'cannot-load': {
    code: 'cannot-load',
    component: 'rice',
    problem: { code: 'not-cooked', why: 'too-low' },
  },
  'cannot-top-up': { code: 'cannot-top-up', pan: 'pan-rice', why: 'other-holding' },
  'cannot-start-clock': { code: 'cannot-start-clock', why: 'no-start-reading' },
  'cannot-cool': { code: 'cannot-cool', batch: 'b1', stage: 1, why: 'nobody-there' },
  'cannot-reheat': { code: 'cannot-reheat', why: 'not-there' },
  'way-not-allowed': { code: 'way-not-allowed', ways: ['discard'] },
  'off-sale': { code: 'off-sale', component: 'rice' },
  'clock-unsure': { code: 'clock-unsure', component: 'rice', helps: 'read' },
  'past-throw-out-by-then': { code: 'past-throw-out-by-then', component: 'rice', at: 0 },
  'past-throw-out': { code: 'past-throw-out', id: '21A' },
  'throw-out-first': { code: 'throw-out-first', count: 2 },
  'handed-over-first': { code: 'handed-over-first', count: 1 },
  'more-handed-over': { code: 'more-handed-over', builds: ['4B'] },
  'cannot-take-lot': { code: 'cannot-take-lot', lot: 'a', problem: { code: 'no-such-lot' } },
  'stood-open': { code: 'stood-open', component: 'slaw' },
  'still-cooling': { code: 'still-cooling', batch: 'b1' },
  'end-not-offered': {
    code: 'end-not-offered',
    id: 'pan-tuna',
    end: 'cold',
    why: 'on-clock',
    paragraph: '3-501.19(B)',
  },
  'end-asks-reading': { code: 'end-asks-reading', id: 'pan-rice', end: 'cool' },
  'food-unanswered': {
    code: 'food-unanswered',
    count: 2,
    what: 'pan',
    id: 'pan-rice',
    component: 'rice',
  },
  'plan-in-past': { code: 'plan-in-past', on: '2026-11-24', time: '13:00' },
  'doors-close-first': { code: 'doors-close-first', opens: '13:00', closes: '11:00' },
  'over-midnight': { code: 'over-midnight', from: '22:00', to: '01:00' },
  'no-such-time': { code: 'no-such-time', on: '2027-03-14', time: '02:30' },
  'after-the-service': { code: 'after-the-service', on: '2026-11-27' },
  'there-twice': { code: 'there-twice', on: '2026-11-26', from: '08:00', to: '09:00' },
  'adult-and-student': { code: 'adult-and-student', on: '2026-11-26', from: '08:00', to: '09:00' },
  'plans-overlap': {
    code: 'plans-overlap',
    service: 's-2',
    on: '2026-11-26',
    doorsOpen: '11:00',
    doorsClose: '13:00',
  },
  'not-as-planned': { code: 'not-as-planned' },
  'prep-not-ready': {
    code: 'prep-not-ready',
    task: 'read-cold.beans',
    component: 'beans',
    at: 0,
    why: 'nobody-there',
  },
  'reading-no-tick': { code: 'reading-no-tick', task: 'read-cold.beans' },
  'food-of-before': { code: 'food-of-before', component: 'rice' },
  'builds-open': { code: 'builds-open', count: 3 },
  'guests-to-find': { code: 'guests-to-find', count: 2 },
  'id-used-for-something-else': { code: 'id-used-for-something-else' },
  'could-not-decide': { code: 'could-not-decide' },
} satisfies Record<RefusalCode, Refusal>

/** An id of each kind that there isn't. */
const unknown: Readonly<Record<Exclude<Unknown, 'item'>, string>> = {
  station: 'birch-hall',
  component: 'kelp',
  ingredient: 'kelp',
  pan: 'pan-kelp',
  backup: 'back-up-kelp',
  'protected-backup': 'tuna',
  batch: 'b7',
  tool: 'scoop-99',
  ticket: '21',
  build: '21A',
  need: 'mustard',
  order: 'kelp-roll',
  caution: '7',
  advice: 'measure rice',
  bells: 'early-release',
  task: 'make.slaw',
}

const notTaken: Of<NotTaken> = {
  'not-the-protocol': { code: 'not-the-protocol' },
  'too-large': { code: 'too-large' },
  'newer-version': { code: 'newer-version' },
  'older-version': { code: 'older-version' },
  'role-may-not': { code: 'role-may-not', role: 'assembly', command: 'send' },
  'wrong-passphrase': { code: 'wrong-passphrase' },
  'no-passphrase': { code: 'no-passphrase' },
  'too-many-tries': { code: 'too-many-tries' },
  'not-proved': { code: 'not-proved' },
  'not-joined': { code: 'not-joined' },
  'no-such-service': { code: 'no-such-service' },
  busy: { code: 'busy' },
  closing: { code: 'closing' },
} satisfies Record<NotTakenCode, NotTaken>

const sentences = [
  ...(Object.keys(unknown) as (keyof typeof unknown)[]).map(
    (what) =>
      [
        `unknown ${what}`,
        sayRefusal({ code: 'unknown', what, id: unknown[what] }, nameIn(demoStation)),
      ] as const,
  ),
  ...Object.values(refusals).map(
    (one) => [one.code, sayRefusal(one, nameIn(demoStation))] as const,
  ),
  ...Object.values(notTaken).map((one) => [one.code, sayNotTaken(one)] as const),
]

describe('what a student reads when something is refused', () => {
  it.each(sentences)('[W1] %s: “%s” is a whole sentence without codes or ids', (_, said) => {
    expect(said).toMatch(/^[A-Z“0-9].*[.?]$/)
    expect(said).not.toMatch(/undefined|null|NaN|\[object|pan-pita|harbor-tuna|handed-over/)
  })

  it('[W1] no two refusals are told in the same words', () => {
    const all = sentences.map(([, said]) => said)
    expect(all.filter((said, index) => all.indexOf(said) !== index)).toEqual([])
  })

  it('[W2] says what is in it by name, and what to do', () => {
    const name = nameIn(demoStation)
    expect(sayRefusal(refusals.contains, name)).toBe(
      'Cheddar contains milk. Leave it out or choose another item.',
    )
    expect(sayRefusal({ code: 'contains', component: 'chicken', need: 'vegan' }, name)).toBe(
      'Herb chicken isn’t vegan. Leave it out or choose another item.',
    )
    expect(sayRefusal(refusals['unknown-declaration'], name)).toBe(
      'We don’t know whether Tuna salad contains soy. Leave it out, or call the person in charge.',
    )
    expect(
      sayRefusal({ code: 'unknown-declaration', component: 'chicken', need: 'vegan' }, name),
    ).toMatch(/^We don’t know whether Herb chicken is vegan\./)
    for (const need of ALLERGEN_SETS['us-9'].groups.map((one) => one.code))
      expect(sayRefusal({ code: 'may-contain', component: 'pita', need }, name)).toContain(
        needName(need),
      )
  })
})

describe('a label that contradicts itself', () => {
  it('[W1] isn’t kept, and says what to do', () => {
    const told = { code: 'label-contradicts', ingredient: 'cheddar' } as const
    const said = sayRefusal({ ...told, problem: { why: 'wheat-is-gluten' } }, (id) => id)
    expect(said).toMatch(
      /^The new label of cheddar isn’t recorded\. Wheat is in it, so gluten is too: say/,
    )
    expect(sayRefusal(told, (id) => id)).toContain('don’t agree')
  })
})

describe('all words that people read', () => {
  const files = filesBelow('lib').filter((path) => path.includes('/words/'))
  const said = (text: string): readonly string[] =>
    /\b(safe|safely|safety|allergen[- ]free|86(?:'?d)?|gluten[- ]free)\b/i.exec(
      text.replaceAll(/^import .*$|^\} from .*$/gm, ''),
    ) ?? []

  it.each(files)('[W3] in %s never call food safe or allergen-free', (file) => {
    expect(said(readFileSync(join(root, file), 'utf8'))).toEqual([])
  })

  it('would be found if they did', () => {
    expect(files.length).toBeGreaterThan(10)
    for (const wrong of ['It is safe to eat.', 'Allergen-free', 'allergen free', 'Gluten-free'])
      expect(said(wrong).length).toBeGreaterThan(0)
  })
})

describe('a tool that would carry something', () => {
  const carries = { code: 'scoop-carries', tool: 'spare', component: 'rice', need: 'fish' } as const
  it('[W1] says which way: into what lacks its scoop, or back to where the tool belongs', () => {
    expect(sayRefusal({ ...carries, from: 'tuna', into: 'rice' }, (id) => id)).toBe(
      'That tool was in tuna: it would carry fish into rice. Take another.',
    )
    expect(sayRefusal({ ...carries, from: 'rice', into: 'slaw' }, (id) => id)).toBe(
      'That tool goes back to slaw: it would carry fish there out of rice. Take another.',
    )
  })
})
