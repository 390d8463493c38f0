/** Needs told with celiac disease as the reason, that are left out only: as the guest said, or a slip. */
import type { Need, NeedCode } from '#lib/needs/codes.ts'
import type { Draft } from '#lib/views/draft.ts'

/** Their codes. Who has celiac disease usually keeps apart: common practice, no source. */
export const leftOutThough = (needs: readonly Need[]): readonly NeedCode[] =>
  needs
    .filter(({ handling, reason }) => reason === 'coeliac' && handling === 'leave-out')
    .map(({ code }) => code)

/** Those of which nobody has asked whether the guest said so. */
export const toAskOf = ({ needs, asSaid = [] }: Draft): readonly NeedCode[] =>
  leftOutThough(needs).filter((code) => !asSaid.includes(code))
