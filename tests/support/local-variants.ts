import { HOUR_MS, type LocalVariant } from '#lib/safety/limits.ts'

/**
 * Local codes that differ; a station states its own. Copies of differing age were read, so the
 * person in charge confirms them with the local authority.
 */
export const LOCAL_VARIANTS = {
  newYorkCity: {
    hotHolding: {
      bound: 'at-least',
      tenths: { F: 1400, C: 600 },
      document: 'New York City Health Code',
      paragraph: '§ 81.10, Table 1',
      certainty: 'seen',
    },
  },
  wisconsin: {
    shellEggAir: {
      bound: 'at-most',
      tenths: { F: 410, C: 50 },
      document: 'Wisconsin Food Code (ATCP 75, Appendix)',
      paragraph: '3-501.16(B)',
      certainty: 'seen',
    },
  },
  southDakota1997: {
    reheatWithin: {
      withinMs: HOUR_MS,
      document: 'Administrative Rules of South Dakota (1997 text)',
      paragraph: '44:02:07:33',
      certainty: 'seen',
    },
  },
} as const satisfies Readonly<Record<string, LocalVariant>>
