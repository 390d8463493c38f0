/** Needs of an order of which somebody has yet to ask whether they are as the guest said. */
import type { NeedCode } from '#lib/needs/codes.ts'
import type { Draft } from '#lib/views/draft.ts'
import { leftOutThough } from '#lib/views/left-out-though.ts'

/** Those left out though celiac disease is the reason, that nobody has asked about. */
export const toAskOf = ({ needs, asSaid = [] }: Draft): readonly NeedCode[] =>
  leftOutThough(needs).filter((code) => !asSaid.includes(code))
