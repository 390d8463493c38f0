import { type Label, UNREAD_LABEL } from '#lib/station/label.ts'
import { labelSchema } from '#lib/station/shapes/label-schema.ts'
import type { KeptLabel, Labels } from '#server/labels/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

interface Row {
  readonly ingredient: string
  readonly product: string
  readonly version: number
  readonly body: string
  readonly same: number
  readonly read_at: number | null
  readonly adult: string | null
}

const ALL = 'ingredient, product, version, body, same, read_at, adult'

/** What no longer parses was never read, as far as anybody knows. */
const labelIn = (body: string): Label | null => {
  const json: unknown = JSON.parse(body)
  if (json === null) return null
  const parsed = labelSchema.safeParse(json)
  return parsed.success ? parsed.data : UNREAD_LABEL
}

const keptOf = (row: Row): KeptLabel => ({
  ingredient: row.ingredient,
  product: row.product === '' ? null : row.product,
  version: row.version,
  label: labelIn(row.body),
  same: row.same === 1,
  at: row.read_at,
  adult: row.adult,
})

/** A house's labels in the house's file. */
export const createSqliteLabels = (file: SqliteDatabase, house: string): Labels => {
  const newest = file.prepare<[string], Row>(
    `SELECT ${ALL} FROM labels AS one WHERE house = ? AND version =
       (SELECT max(version) FROM labels
        WHERE house = one.house AND ingredient = one.ingredient AND product = one.product)`,
  )
  const since = file.prepare<[string, string, number], Row>(
    `SELECT ${ALL} FROM labels
     WHERE house = ? AND ingredient = ? AND product = '' AND version > ? ORDER BY version`,
  )
  const newestOf = file
    .prepare<[string, string, string], number | null>(
      'SELECT max(version) FROM labels WHERE house = ? AND ingredient = ? AND product = ?',
    )
    .pluck()
  const add = file.prepare<
    [string, string, string, number, string, number, number | null, string | null]
  >(`INSERT INTO labels (house, ${ALL}) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`)

  const put = file.transaction((label: KeptLabel, saw: number | undefined): boolean => {
    const product = label.product ?? ''
    const known = newestOf.get(house, label.ingredient, product) ?? null
    if (known !== null && label.version <= known) return false
    if (saw !== undefined && saw !== (known ?? 0)) return false
    const { ingredient, version, same, at, adult } = label
    const body = JSON.stringify(label.label)
    add.run(house, ingredient, product, version, body, same ? 1 : 0, at, adult)
    return true
  })

  return {
    newest: () => newest.all(house).map(keptOf),
    since: (ingredient, version) => since.all(house, ingredient, version).map(keptOf),
    put: (label, saw) => put.immediate(label, saw),
  }
}
