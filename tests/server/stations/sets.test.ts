import { describe, expect, test } from 'vitest'
import usda from '#fixtures/reference/usda-sr28.json' with { type: 'json' }
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { panUsableMl } from '#lib/measure/pans.ts'
import { ladleVolumeMl, SCOOP_HANDLES, scoopVolumeMl } from '#lib/measure/scoops.ts'
import { usualChoice } from '#lib/service/events/build-choice.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import { declarable } from '#lib/station/codes/askable.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { newestStationSchema } from '#lib/station/schema.ts'
import type { PortionRule, StationDocument } from '#lib/station/station-document.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import {
  codeOf,
  type Given,
  happening,
  NOTHING,
  needs,
  type Told,
  when,
} from '#tests/support/service.ts'

const each = STATION_SETS.map(({ from, document }) => [from, document] as const)

const OPEN = (station: StationDocument): Given => ({
  type: 'open',
  station: station.id,
  kind: 'real',
})

const told = (station: StationDocument, commands: readonly Given[]): Told => {
  const over = { station: () => ({ revision: 1, document: station }), newestLabels: {} }
  return commands.reduce((so: Told, command) => {
    const decision = when(so, command, { ...over, by: 'in-charge' })
    if ('refusal' in decision)
      throw new Error(`${command.type}: ${JSON.stringify(decision.refusal)}`)
    return happening(so, decision.events)
  }, NOTHING)
}

/** Opened, and every pan of it loaded as usual. */
const loaded = (station: StationDocument): Told => {
  const opened = told(station, [OPEN(station)])
  const now = opened.state.openedAt ?? 0
  return told(station, [OPEN(station), ...openingCommands(station, now, { backups: [] })])
}

/** As if each label had been read and declared all of it free: the words of no pack. */
const labelsRead = (station: StationDocument): StationDocument => ({
  ...station,
  ingredients: station.ingredients.map((one) => ({
    ...one,
    declarations: Object.fromEntries([...declarable(station)].map((code) => [code, 'free'])),
    traits: [],
    readOn: '2026-11-24',
    readBy: 'person in charge',
  })),
})

/** What a portion takes up in its pan; null where it is counted or weighed. */
const volumeMl = (portion: PortionRule): number | null => {
  if (portion.tool === 'scoop') return scoopVolumeMl(portion.number) * portion.level
  if (portion.tool === 'spoodle') return (ladleVolumeMl(portion.flOz) ?? 0) * portion.level
  return portion.tool === 'cup' ? mlFrom(portion.flOz, 'flOz') : null
}

const guest = (code: string) => needs({ code, handling: 'leave-out', reason: 'allergy' })

describe.each(each)('the set %s', (_, station) => {
  test('[CA1] says of itself what the schema takes, with ids and names of its own', () => {
    expect(newestStationSchema.safeParse(station).error?.issues).toBeUndefined()
    expect(station.invented).toBe(true)
    const pans = pansOf(station)
    expect(pans.length).toBeGreaterThanOrEqual(8)
    expect(pans.length).toBeLessThanOrEqual(12)
    expect(station.items.length).toBeGreaterThanOrEqual(3)
    expect(station.items.length).toBeLessThanOrEqual(4)
  })

  test('[CA1] has read no label, and nobody has said what touches what', () => {
    for (const { id, name: _, plural: __, ...label } of station.ingredients)
      expect(label, id).toEqual(UNREAD_LABEL)
    expect(station.contacts).toBeNull()
  })

  test('[CA1] uses everything that it lists', () => {
    const made = [...station.recipes, ...station.components]
    const used = new Set(made.flatMap((one) => [...one.ingredients, ...one.recipes]))
    expect([...station.ingredients, ...station.recipes].filter(({ id }) => !used.has(id))).toEqual(
      [],
    )
    for (const { id, lines, ...one } of made)
      if (lines !== undefined)
        expect(lines.map(({ of }) => of).sort(), id).toEqual(
          [...one.ingredients, ...one.recipes].sort(),
        )
    const sold = new Set(
      station.items.flatMap((one) => [
        ...(one.base?.choices ?? []),
        ...one.parts.map((part) => part.component),
      ]),
    )
    expect(station.components.filter(({ id }) => !sold.has(id)).map(({ id }) => id)).toEqual([])
  })

  test('[CA1] takes portions by scoops of the trade, and loads its pans within what they hold', () => {
    const numbers = SCOOP_HANDLES.map(({ number }) => number)
    for (const pan of pansOf(station)) {
      const { portion } = componentOf(station, pan.component)
      if (portion.tool === 'scoop') expect(numbers, pan.id).toContain(portion.number)
      const ml = volumeMl(portion)
      if (ml !== null)
        expect(ml * pan.usualPortions, pan.id).toBeLessThanOrEqual(
          panUsableMl(pan.size, pan.depthIn) ?? 0,
        )
    }
  })

  test('[CA1] names where each density is from, as that table has it', () => {
    for (const { id, portion } of station.components) {
      if (!('gPerCup' in portion)) continue
      const { source, gPerCup } = portion
      expect(source, id).toMatch(/WEIGHT\.txt|from memory$|^common practice, no source/)
      if (!source.includes('WEIGHT.txt')) continue
      const ndb = /NDB (\d{5})/.exec(source)?.[1]
      const rows = usda.rows.filter((row) => row.ndb === ndb && row.measure === 'cup')
      expect(
        rows.map((row) => row.grams / row.amount),
        id,
      ).toContain(gPerCup)
    }
  })

  test('[CA1] opens, and sells each item as it usually is to a guest without needs', () => {
    const ready = loaded(station)
    for (const item of station.items) {
      const command: Given = {
        type: 'send',
        builds: [usualChoice(item)],
        paid: false,
        readBack: true,
      }
      expect(codeOf(when(ready, command)), item.id).toBeNull()
    }
  })

  test('[CA1] sells to a guest who leaves milk out only once its labels are read', () => {
    for (const item of station.items) {
      const build = { ...usualChoice(item), ...guest('milk') }
      const command: Given = { type: 'send', builds: [build], paid: false, readBack: true }
      expect(codeOf(when(loaded(station), command)), item.id).not.toBeNull()
      expect(codeOf(when(loaded(labelsRead(station)), command)), item.id).toBeNull()
    }
  })
})

test('[CA1] the sets are told apart by what one begins from', () => {
  expect(STATION_SETS.map(({ from }) => from)).toEqual(['grain-bowl', 'potato-bar', 'breakfast'])
  expect(new Set(STATION_SETS.map(({ document }) => document.id)).size).toBe(3)
})
