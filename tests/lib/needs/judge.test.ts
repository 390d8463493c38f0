import { describe, expect, it } from 'vitest'
import { isCovered } from '#lib/needs/covered.ts'
import { judgeComponent, judgeTaken, RANK, strictest } from '#lib/needs/judge.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { backup, kitchen, need, touching } from '#tests/support/kitchens.ts'

const milk = (word: Declaration) => ({ said: { cheese: { milk: word } } })

describe('what a component is to a guest', () => {
  it('[N14] keep apart rules out what contains it and what isn’t known, and warns as the label does', () => {
    const said = (word: Declaration) =>
      judgeComponent(kitchen(milk(word)), 'cheese', [need('milk')])
    expect(said('contains')).toMatchObject({ level: 'no', findings: [{ why: 'contains' }] })
    expect(said('unknown')).toMatchObject({ level: 'no', findings: [{ why: 'unknown' }] })
    expect(said('may-contain')).toMatchObject({
      level: 'caution',
      findings: [{ why: 'may-contain', through: ['cheese'] }],
    })
    expect(said('free')).toEqual({ level: 'ok', findings: [], fromBackup: false })
  })

  it('[N15] leave out rules out what contains it, asks about what isn’t known, and notes the rest', () => {
    const said = (word: Declaration) =>
      judgeComponent(kitchen(milk(word)), 'cheese', [need('milk', 'leave-out')]).level
    expect(said('contains')).toBe('no')
    expect(said('unknown')).toBe('ask')
    expect(said('may-contain')).toBe('note')
    expect(said('free')).toBe('ok')
    const beside = kitchen({ ...milk('contains'), contacts: [touching('scoop', 'cheese', 'leaf')] })
    expect(judgeComponent(beside, 'leaf', [need('milk', 'leave-out')])).toMatchObject({
      level: 'note',
      findings: [{ why: 'contact', touches: 'cheese' }],
    })
    const unsaid = kitchen({ contacts: null })
    expect(judgeComponent(unsaid, 'leaf', [need('milk', 'leave-out')])).toMatchObject({
      level: 'note',
      findings: [{ why: 'contact-unknown' }],
    })
  })

  it('[N15] names the way to what it finds, through recipes', () => {
    const said = (word: Declaration, code: 'leave-out' | 'keep-apart') =>
      judgeComponent(kitchen(milk(word)), 'cheese', [need('milk', code)]).findings
    for (const word of ['contains', 'unknown', 'may-contain'] as const)
      for (const handling of ['leave-out', 'keep-apart'] as const)
        expect(said(word, handling)).toMatchObject([{ why: word, through: ['cheese'] }])
  })

  it('[N21] no level is as bad as another', () => {
    const levels = ['no', 'caution', 'ask', 'note', 'ok'] as const
    for (const [at, level] of levels.slice(1).entries())
      expect(RANK[level], level).toBeGreaterThan(RANK[levels[at] ?? 'ok'])
  })

  it('[N16] shared contact reaches over any number of tools and pans', () => {
    const row = kitchen({
      ...milk('contains'),
      contacts: [
        touching('beside', 'sauce', 'leaf'),
        touching('board', 'leaf', 'heart'),
        touching('scoop', 'heart', 'cheese'),
      ],
    })
    expect(judgeComponent(row, 'sauce', [need('milk')])).toMatchObject({
      level: 'caution',
      findings: [{ why: 'contact', touches: 'cheese', contact: 'beside', through: ['cheese'] }],
    })
    expect(judgeComponent(row, 'bowl', [need('milk')]).level).toBe('ok')
  })

  it.each(['may-contain', 'unknown'] as const)('[N16] counts what is %s beside it', (word) => {
    const beside = kitchen({ ...milk(word), contacts: [touching('beside', 'cheese', 'leaf')] })
    expect(judgeComponent(beside, 'leaf', [need('milk')]).level).toBe('caution')
  })

  it('[N16] says how the way begins to what reaches it', () => {
    const contacts = [touching('beside', 'leaf', 'heart'), touching('griddle', 'leaf', 'cheese')]
    const shared = kitchen({ ...milk('contains'), contacts })
    expect(judgeComponent(shared, 'leaf', [need('milk')]).findings).toMatchObject([
      { touches: 'cheese', contact: 'griddle' },
    ])
    expect(judgeComponent(shared, 'heart', [need('milk')]).findings).toMatchObject([
      { touches: 'cheese', contact: 'beside' },
    ])
    const soiled = kitchen({ ...milk('contains'), soiled: [{ component: 'leaf', by: 'cheese' }] })
    expect(judgeComponent(soiled, 'leaf', [need('milk')]).findings).toMatchObject([
      { why: 'soiled', contact: 'scoop' },
      { why: 'contact', contact: 'scoop' },
    ])
  })

  const leafBackup = { backups: [backup('leaf')], ready: ['leaf'] }

  it.each(['scoop', 'beside', 'reached-over'] as const)(
    '[N17] a protected back-up pan that stands ready clears %s',
    (kind) => {
      const contacts = [touching(kind, 'cheese', 'leaf')]
      const at = (over: object) =>
        judgeComponent(kitchen({ ...milk('contains'), contacts, ...over }), 'leaf', [need('milk')])
      expect(at(leafBackup)).toEqual({ level: 'ok', findings: [], fromBackup: true })
      expect(at({ ...leafBackup, ready: [] })).toMatchObject({
        level: 'caution',
        fromBackup: false,
      })
      const bare = { ...leafBackup, backups: [backup('leaf', false)] }
      expect(at(bare)).toMatchObject({ level: 'caution', fromBackup: false })
    },
  )

  it.each(['board', 'griddle', 'press', 'toaster', 'fryer', 'warmer'] as const)(
    '[N17] nothing clears a shared %s',
    (kind) => {
      const contacts = [touching(kind, 'cheese', 'leaf')]
      const shared = kitchen({ ...milk('contains'), contacts, ...leafBackup })
      expect(judgeComponent(shared, 'leaf', [need('milk')])).toMatchObject({
        level: 'caution',
        fromBackup: false,
      })
    },
  )

  it('[N17] nor what comes by way of the line over something that never clears', () => {
    const round = kitchen({
      ...milk('contains'),
      contacts: [touching('griddle', 'leaf', 'wrap'), touching('beside', 'leaf', 'cheese')],
      ...leafBackup,
    })
    expect(judgeComponent(round, 'leaf', [need('milk')]).level).toBe('caution')
  })

  it('[N17] is taken from it with a warning of its own, and never where it can’t be served', () => {
    const at = (leaf: Declaration) =>
      judgeComponent(
        kitchen({
          said: { cheese: { milk: 'contains' }, leaf: { milk: leaf } },
          contacts: [touching('beside', 'cheese', 'leaf')],
          ...leafBackup,
        }),
        'leaf',
        [need('milk')],
      )
    expect(at('may-contain')).toMatchObject({
      fromBackup: true,
      findings: [{ why: 'may-contain' }],
    })
    for (const word of ['contains', 'unknown'] as const)
      expect(at(word)).toMatchObject({ fromBackup: false, level: 'no' })
  })

  it('[N16] doesn’t touch itself by way of what it touches', () => {
    const plan = kitchen({
      said: { cheese: { milk: 'contains' }, leaf: { milk: 'may-contain' } },
      contacts: [touching('beside', 'leaf', 'cheese')],
    })
    const [, contact] = judgeComponent(plan, 'leaf', [need('milk')]).findings
    expect(contact).toMatchObject({ why: 'contact', reached: ['cheese'] })
    expect(Object.keys(contact?.states ?? {}).sort()).toEqual(['cheese', 'leaf'])
  })

  it('[N18] nothing is kept apart where nobody has said what touches what', () => {
    expect(judgeComponent(kitchen({ contacts: null }), 'leaf', [need('milk')])).toMatchObject({
      level: 'no',
      findings: [{ why: 'contact-unknown' }],
    })
  })

  it('[N19] another scoop that went in brings what it carried, and its pan touches on', () => {
    const soiled = kitchen({
      ...milk('contains'),
      contacts: [touching('beside', 'leaf', 'sauce')],
      soiled: [{ component: 'leaf', by: 'cheese' }],
    })
    for (const one of ['leaf', 'sauce'])
      expect(judgeComponent(soiled, one, [need('milk')]).level).toBe('caution')
    expect(judgeComponent(soiled, 'heart', [need('milk')]).level).toBe('ok')
  })

  it('[N19] names the scoop beside what touches it anyway, and not out of the back-up pan', () => {
    const plan = {
      ...milk('contains'),
      contacts: [touching('beside', 'leaf', 'cheese'), touching('beside', 'sauce', 'cheese')],
    }
    const whys = (over: object) =>
      judgeComponent(kitchen({ ...plan, ...over }), 'leaf', [need('milk')]).findings.map(
        ({ why, touches, reached }) => [why, touches, reached],
      )
    const beside = ['contact', 'cheese', ['cheese']]
    expect(whys({})).toEqual([beside])
    expect(whys({ soiled: [{ component: 'leaf', by: 'cheese' }] })).toEqual([
      ['soiled', 'cheese', ['cheese']],
      beside,
    ])
    // The sauce is free of milk itself, and stands beside the cheese.
    expect(whys({ soiled: [{ component: 'leaf', by: 'sauce' }] })).toEqual([
      ['soiled', 'sauce', ['sauce']],
      beside,
    ])
    expect(whys({ soiled: [{ component: 'leaf', by: 'cheese' }], ...leafBackup })).toEqual([])
  })

  it('[N25] an acceptance covers what was told, and nothing that came since', () => {
    const plan = { ...milk('contains'), contacts: [touching('beside', 'leaf', 'cheese')] }
    const at = (over: object) =>
      judgeComponent(kitchen({ ...plan, ...over }), 'leaf', [need('milk')])
    const [told] = at({}).findings
    if (!told) throw new Error('nothing to accept')
    const covers = (over: object) => at(over).findings.every((one) => isCovered(one, told))
    expect(covers({})).toBe(true)
    expect(covers({ soiled: [{ component: 'leaf', by: 'cheese' }] })).toBe(false)
    const alsoSauce = {
      said: { cheese: { milk: 'contains' as const }, sauce: { milk: 'may-contain' as const } },
      contacts: [touching('beside', 'leaf', 'cheese', 'sauce')],
    }
    expect(at(alsoSauce).findings[0]).toMatchObject({
      touches: 'cheese',
      reached: ['cheese', 'sauce'],
    })
    expect(covers(alsoSauce)).toBe(false)
    for (const other of [
      { component: 'sauce' },
      { need: 'egg' },
      { why: 'soiled' },
      { touches: 'sauce' },
      { reached: ['sauce'] },
    ] as const)
      expect(isCovered({ ...told, ...other }, told), JSON.stringify(other)).toBe(false)
  })

  it('[N26] an acceptance is void where what was told of is declared worse since', () => {
    const contacts = [touching('beside', 'leaf', 'cheese', 'sauce')]
    const saying = (cheese: Declaration, sauce: Declaration) =>
      judgeComponent(
        kitchen({ said: { cheese: { milk: cheese }, sauce: { milk: sauce } }, contacts }),
        'leaf',
        [need('milk')],
      ).findings
    const covers = (then: [Declaration, Declaration], now: [Declaration, Declaration]) =>
      saying(...now).every((one) => saying(...then).some((told) => isCovered(one, told)))
    expect(covers(['may-contain', 'may-contain'], ['contains', 'may-contain'])).toBe(false)
    expect(covers(['may-contain', 'may-contain'], ['unknown', 'may-contain'])).toBe(false)
    // The worst is the same as before, and another of those that were told got worse.
    expect(covers(['contains', 'may-contain'], ['contains', 'contains'])).toBe(false)
    expect(covers(['contains', 'may-contain'], ['contains', 'may-contain'])).toBe(true)
    expect(covers(['contains', 'may-contain'], ['may-contain', 'may-contain'])).toBe(true)
  })

  it('[N26] an acceptance of an older log, which doesn’t say what was declared, counts as it did', () => {
    const contacts = [touching('beside', 'leaf', 'cheese')]
    const saying = (cheese: Declaration) =>
      judgeComponent(kitchen({ said: { cheese: { milk: cheese } }, contacts }), 'leaf', [
        need('milk'),
      ]).findings
    const [told] = saying('may-contain')
    const [now] = saying('contains')
    if (!told || !now) throw new Error('nothing to accept')
    const { states: _, ...older } = told
    expect(isCovered(now, older)).toBe(true)
    expect(isCovered(now, told)).toBe(false)
  })

  it('[N20] a station that blocks cautions serves none of them', () => {
    const over = { cautions: 'block' as const }
    const contacts = [touching('beside', 'cheese', 'leaf')]
    const strict = kitchen({ ...milk('may-contain'), contacts, over })
    for (const one of ['cheese', 'leaf'])
      expect(judgeComponent(strict, one, [need('milk')]).level).toBe('no')
    expect(judgeComponent(strict, 'leaf', [need('milk', 'leave-out')]).level).toBe('note')
  })

  it('[N16] names the warning of its own label and what touches it', () => {
    const plan = kitchen({
      said: { cheese: { milk: 'contains' }, leaf: { milk: 'may-contain' } },
      contacts: [touching('beside', 'cheese', 'leaf')],
    })
    expect(judgeComponent(plan, 'leaf', [need('milk')]).findings.map((one) => one.why)).toEqual([
      'may-contain',
      'contact',
    ])
  })

  it('[N17] is taken from the back-up pan only for what is kept apart', () => {
    const contacts = [touching('beside', 'cheese', 'leaf')]
    const plan = kitchen({ ...milk('contains'), contacts, ...leafBackup })
    const at = (...needs: ReturnType<typeof need>[]) => judgeComponent(plan, 'leaf', needs)
    expect(at(need('milk', 'leave-out'))).toMatchObject({ level: 'note', fromBackup: false })
    expect(at(need('milk', 'leave-out'), need('egg'))).toMatchObject({ fromBackup: false })
    expect(at(need('egg', 'leave-out'), need('milk'))).toMatchObject({ fromBackup: true })
  })

  it('[N19] notes a foreign scoop to who only leaves it out', () => {
    const soiled = kitchen({ ...milk('contains'), soiled: [{ component: 'leaf', by: 'cheese' }] })
    expect(judgeComponent(soiled, 'leaf', [need('milk', 'leave-out')])).toMatchObject({
      level: 'note',
      findings: [
        { why: 'soiled', level: 'note', touches: 'cheese' },
        { why: 'contact', level: 'note', touches: 'cheese' },
      ],
    })
  })

  it('counts a need that is named twice alike once, as it was named first', () => {
    const first = need('milk', 'leave-out')
    expect(strictest([first, { ...first, reason: 'allergy' }, need('egg')])).toEqual([
      first,
      need('egg'),
    ])
  })

  it('counts a need that is kept apart twice as it was kept apart first', () => {
    const first = need('milk')
    const twice = [need('milk', 'leave-out'), first, { ...first, reason: 'allergy' as const }]
    expect(strictest(twice)).toEqual([first])
  })

  it('counts a need that is named twice as keep apart', () => {
    const contacts = [touching('beside', 'cheese', 'leaf')]
    const beside = kitchen({ ...milk('contains'), contacts })
    const both = [need('milk', 'leave-out'), need('milk')]
    expect(judgeComponent(beside, 'leaf', both)).toMatchObject({ level: 'caution' })
    expect(judgeComponent(beside, 'leaf', both).findings).toHaveLength(1)
  })
})

describe('what a build is to a guest', () => {
  it('[N21] is the worst of what it takes, worst first, with the pans to take it from', () => {
    const busy = kitchen({
      said: { cheese: { milk: 'contains' }, sauce: { milk: 'may-contain' } },
      contacts: [touching('beside', 'cheese', 'leaf')],
      backups: [backup('leaf')],
      ready: ['leaf'],
    })
    const taken = (...components: string[]) => judgeTaken(busy, components, [need('milk')])
    expect(taken('bowl', 'heart')).toEqual({ level: 'ok', findings: [], fromBackup: [] })
    expect(taken('bowl', 'leaf')).toMatchObject({ level: 'ok', fromBackup: ['leaf'] })
    expect(taken('bowl', 'leaf', 'sauce').level).toBe('caution')
    expect(taken('sauce', 'leaf', 'cheese').findings.map((one) => one.component)).toEqual([
      'cheese',
      'sauce',
    ])
    expect(judgeTaken(busy, ['cheese'], [])).toEqual({ level: 'ok', findings: [], fromBackup: [] })
  })

  it('[S99] that is made is judged by the pans that each came from', () => {
    const busy = kitchen({
      said: { cheese: { milk: 'contains' } },
      contacts: [touching('beside', 'cheese', 'leaf')],
      backups: [backup('leaf')],
      ready: ['leaf'],
    })
    const from = (leaf: 'line' | 'backup') =>
      judgeTaken(busy, ['bowl', 'leaf'], [need('milk')], { bowl: 'line', leaf })
    expect(from('line')).toMatchObject({ level: 'caution', fromBackup: [] })
    expect(from('backup')).toMatchObject({ level: 'ok', fromBackup: ['leaf'] })
    const gone = { ...busy, ready: [] }
    const made = judgeTaken(gone, ['leaf'], [need('milk')], { leaf: 'backup' })
    expect(made).toMatchObject({ level: 'ok', fromBackup: ['leaf'] })
  })

  it('[N19] finds the foreign scoop that was in the back-up pan from which it came', () => {
    const soiledBehind = [{ component: 'leaf', by: 'cheese' }]
    const dirty = { ...kitchen(milk('contains')), soiledBehind }
    const from = (leaf: 'line' | 'backup') => judgeTaken(dirty, ['leaf'], [need('milk')], { leaf })
    expect(from('backup').findings).toMatchObject([{ why: 'soiled', touches: 'cheese' }])
    expect(from('line').findings).toEqual([])
  })

  it('[N51] says of a scoop that is lent that it is a scoop', () => {
    const lent = [{ component: 'leaf', by: 'cheese' }]
    const judged = judgeTaken(kitchen({ ...milk('contains'), lent }), ['leaf'], [need('milk')])
    expect(judged.findings).toMatchObject([{ why: 'contact', contact: 'scoop', touches: 'cheese' }])
  })

  it('fails on a component that isn’t there', () => {
    expect(() => judgeTaken(kitchen(), ['nothing'], [need('milk')])).toThrow('no component nothing')
  })
})
