/** A portion while it is set up: its tool, and the sizes that it is sold in. */
import { isRecord, type Json, type Row } from '#lib/editor/draft.ts'
import { MEASURE_UNITS, SPOODLE_FL_OZ } from '#lib/measure/portion-tools.ts'
import { LADLE_FL_OZ, SCOOP_HANDLES } from '#lib/measure/scoops.ts'

export const TOOLS = [
  'scoop',
  'ladle',
  'spoodle',
  'measure',
  'tongs',
  'tongs-pieces',
  'piece',
  'cup',
  'bottle',
] as const

export type Tool = (typeof TOOLS)[number]

/** What a tool begins with until somebody says: the middle of the trade's sizes. */
const FIRST: Readonly<Record<Tool, Row>> = {
  scoop: { tool: 'scoop', number: 16, level: 1 },
  ladle: { tool: 'ladle', flOz: 4, level: 1 },
  spoodle: { tool: 'spoodle', flOz: 4, level: 1 },
  measure: { tool: 'measure', size: 0.25, unit: 'cup', level: 1 },
  tongs: { tool: 'tongs' },
  'tongs-pieces': { tool: 'tongs-pieces', pieces: 1 },
  piece: { tool: 'piece', pieces: 1 },
  cup: { tool: 'cup', flOz: 2 },
  bottle: { tool: 'bottle', squeezes: 1 },
}

const OF_VOLUME: readonly Tool[] = ['scoop', 'ladle', 'spoodle', 'measure']

export const isOfVolume = (tool: Tool | null): boolean => tool !== null && OF_VOLUME.includes(tool)

export const toolOf = (portion: Json | undefined): Tool | null =>
  isRecord(portion) ? (TOOLS.find((one) => one === portion.tool) ?? null) : null

/** A portion by another tool: what a level cup weighs is the food's, and stays. */
export const withTool = (portion: Json | undefined, tool: Tool): Row => {
  const before = isRecord(portion) ? portion : {}
  const kept = isOfVolume(tool)
    ? Object.fromEntries(
        ['level', 'gPerCup'].flatMap((field) =>
          before[field] === undefined ? [] : [[field, before[field]]],
        ),
      )
    : {}
  const source = isOfVolume(tool) || tool === 'tongs' ? before.source : undefined
  return { ...FIRST[tool], ...kept, ...(source === undefined ? {} : { source }) }
}

/** Sizes in which a tool is sold, as fields of a portion. */
export const sizesOf = (tool: Tool): readonly Row[] => {
  switch (tool) {
    case 'scoop':
      return SCOOP_HANDLES.map(({ number }) => ({ number }))
    case 'ladle':
      return LADLE_FL_OZ.map((flOz) => ({ flOz }))
    case 'spoodle':
      return SPOODLE_FL_OZ.map((flOz) => ({ flOz }))
    case 'measure':
      return [
        ...[1, 0.75, 0.5, 0.3333, 0.25].map((size) => ({ size, unit: MEASURE_UNITS[0] })),
        ...[2, 1].map((size) => ({ size, unit: MEASURE_UNITS[1] })),
        { size: 1, unit: MEASURE_UNITS[2] },
      ]
    case 'cup':
      return [1, 1.5, 2, 3.25, 4, 5.5].map((flOz) => ({ flOz }))
    default:
      return []
  }
}
