import type { Refusal, RefusalCode, Unknown } from '#lib/service/refusal.ts'

/** Its code, and of what isn't there also what that is. */
export type ToldCode = Exclude<RefusalCode, 'unknown'> | `unknown ${Unknown}`

export const toldCode = (refusal: Refusal): ToldCode =>
  refusal.code === 'unknown' ? `unknown ${refusal.what}` : refusal.code
