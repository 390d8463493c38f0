/** Portion × count = total of a pan while it is set up. */
import { isRecord, type Json } from '#lib/editor/draft.ts'
import { type PortionTotal, portionTotal } from '#lib/recipes/portion-total.ts'
import { portionAmount } from '#lib/station/portion-amount.ts'
import { portionSchema } from '#lib/station/shapes/portion-schema.ts'

/** What it weighs isn't asked of a measure: any that is lawful. */
const ANY_WEIGHT = { gPerCup: 100, source: 'none' }

/** As so many portions are on every sheet; null while either isn't said yet, or isn't lawful. */
export const typedLoad = (
  portion: Json | undefined,
  count: Json | undefined,
): PortionTotal | null => {
  if (!isRecord(portion) || typeof count !== 'number' || !Number.isSafeInteger(count) || count < 1)
    return null
  const parsed = [portion, { ...portion, ...ANY_WEIGHT }].map((one) => portionSchema.safeParse(one))
  const found = parsed.find(({ success }) => success)
  return found?.data === undefined ? null : portionTotal(portionAmount(found.data), count)
}
