/** Tastings and measured yields in the house's file. Only this server writes it. */
import type { Tasting } from '#lib/tasting/tasting.ts'
import type { YieldMark } from '#lib/tasting/yield-marks.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export interface TastingKept {
  readonly tasting: Tasting
  /** Commands that were taken, by id: what each said, so that one sent again has no second effect. */
  readonly taken: Readonly<Record<string, string>>
}

export interface TastingStore {
  find(id: string): TastingKept | null
  all(station?: string): readonly TastingKept[]
  /** With the yields that are saved by it, at once. */
  put(kept: TastingKept, yields: readonly YieldSaved[]): void
  /** As they were saved; marks not looked at. */
  yields(station: string): readonly YieldSaved[]
  /** The oldest first. */
  marks(station: string): readonly YieldMark[]
  mark(station: string, mark: YieldMark): void
}

/** Of one that was saved by a tasting. */
export const yieldId = (tasting: string, component: string): string =>
  `tasting/${tasting}/${component}`

interface YieldRow extends Omit<YieldSaved, 'id' | 'on' | 'from' | 'load' | 'out'> {
  readonly tasting: string
  readonly on_day: string
  readonly load_portions: number | null
}

interface MarkRow {
  readonly yields: string
  readonly is_out: 0 | 1
  readonly at: number
  readonly command: string
}

export const createTastingStore = (house: SqliteDatabase): TastingStore => {
  const one = house.prepare<[string], string>('SELECT body FROM tastings WHERE id = ?').pluck()
  const each = house.prepare<[], string>('SELECT body FROM tastings ORDER BY number').pluck()
  const put = house.prepare<[string, string, string]>(
    `INSERT INTO tastings (id, station, body) VALUES (?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET body = excluded.body`,
  )
  const add = house.prepare<
    [string, string, string, string, number, number | null, string | null, number | null, string]
  >(
    `INSERT INTO measured_yields (station, component, card, on_day, ratio, factor, typed, load_portions, tasting)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
  )
  const saved = house.prepare<[string], YieldRow>(
    `SELECT component, card, on_day, ratio, factor, typed, load_portions, tasting FROM measured_yields
     WHERE station = ? ORDER BY number`,
  )
  const marks = house.prepare<[string], MarkRow>(
    'SELECT yields, is_out, at, command FROM yield_marks WHERE station = ? ORDER BY number',
  )
  const mark = house.prepare<[string, string, number, number, string]>(
    'INSERT INTO yield_marks (station, yields, is_out, at, command) VALUES (?, ?, ?, ?, ?)',
  )
  const putAll = house.transaction(
    ({ tasting, taken }: TastingKept, yields: readonly YieldSaved[]) => {
      put.run(tasting.id, tasting.station, JSON.stringify({ tasting, taken }))
      for (const { component, card, on, ratio, factor, typed, load } of yields)
        add.run(tasting.station, component, card, on, ratio, factor, typed, load, tasting.id)
    },
  )
  const read = (body: string): TastingKept => {
    const kept = JSON.parse(body)
    // Of before readings were asked for.
    return { ...kept, tasting: { readings: [], ...kept.tasting } }
  }
  return {
    find: (id) => {
      const body = one.get(id)
      return body === undefined ? null : read(body)
    },
    all: (station) =>
      each
        .all()
        .map(read)
        .filter(({ tasting }) => station === undefined || tasting.station === station),
    put: (kept, yields) => putAll.immediate(kept, yields),
    yields: (station) =>
      saved.all(station).map(({ on_day: on, load_portions: load, tasting, ...rest }) => ({
        ...{ ...rest, on, load, out: null },
        id: yieldId(tasting, rest.component),
        from: 'tasting',
      })),
    marks: (station) =>
      marks.all(station).map(({ is_out, command: by, ...rest }) => ({
        ...{ ...rest, by },
        isOut: is_out === 1,
      })),
    mark: (station, { yields, isOut, at, by }) => {
      mark.run(station, yields, isOut ? 1 : 0, at, by)
    },
  }
}
