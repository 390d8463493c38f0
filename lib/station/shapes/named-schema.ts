/** How parts of a station document are called. */
import { z } from 'zod'

/** Ids are keys of plain records, so a name that every record inherits can't be one. */
export const idSchema = z.string().regex(/^(?!constructor$)[a-z][a-z0-9-]{0,39}$/)

export const words = z.string().trim().min(1).max(60)

/** A name that takes a verb of many, as "almonds"; one where it is left away, as "hummus". */
export const plural = z.literal(true).optional()
