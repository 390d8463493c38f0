import { toolVolumeMl, type VolumeTool } from '#lib/measure/portion-tools.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import { type PortionTotal, portionTotal } from '#lib/recipes/portion-total.ts'
import { dividedBy, fromNumber, type Rational, ratio, times } from '#lib/recipes/rational.ts'
import { scoopMl, US_ML } from '#lib/recipes/units.ts'
import type { Component, PortionRule } from '#lib/station/station-document.ts'

const volume = (size: Rational): Amount => ({ kind: 'volume', size, written: 'us' })
const weight = (size: Rational): Amount => ({ kind: 'weight', size, written: 'metric' })

/** A measure's size is a decimal in the document, 0.3333 for a third of a cup. */
const toolMl = (tool: VolumeTool): Rational => {
  if (tool.tool === 'scoop') return scoopMl(tool.number)
  if (tool.tool === 'measure') return fromNumber(toolVolumeMl(tool))
  return times(US_ML.flOz, fromNumber(tool.flOz))
}

/** One portion by its tool, exactly: what it measures, whatever that weighs. */
export const portionAmount = (rule: PortionRule): Amount => {
  switch (rule.tool) {
    case 'scoop':
    case 'ladle':
    case 'spoodle':
    case 'measure':
      return volume(times(toolMl(rule), ratio(rule.level)))
    case 'tongs':
      return weight(fromNumber(rule.grams))
    case 'tongs-pieces':
    case 'piece':
      return { kind: 'count', size: ratio(rule.pieces), of: 'piece' }
    case 'cup':
      return volume(times(US_ML.flOz, fromNumber(rule.flOz)))
    case 'bottle': {
      const each = dividedBy(fromNumber(rule.weighed.grams), ratio(rule.weighed.squeezes))
      return weight(times(each, ratio(rule.squeezes)))
    }
  }
}

/** Of so many portions of a component: portion × count = total. */
export const loadTotal = ({ portion }: Pick<Component, 'portion'>, count: number): PortionTotal =>
  portionTotal(portionAmount(portion), count)
