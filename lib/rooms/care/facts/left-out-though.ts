/** Needs told with celiac disease as the reason, that are left out only: as the guest said, or a slip. */
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'

/** Their codes. Who has celiac disease usually keeps apart: common practice, no source. */
export const leftOutThough = (needs: readonly Need[]): readonly NeedCode[] =>
  needs
    .filter(({ handling, reason }) => reason === 'coeliac' && handling === 'leave-out')
    .map(({ code }) => code)
