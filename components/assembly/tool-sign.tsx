import styles from '#components/assembly/pan.module.css'
import { ScoopSign } from '#components/assembly/scoop-sign.tsx'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import type { VolumeTool } from '#lib/measure/portion-tools.ts'
import type { TakePan } from '#lib/rooms/making/views/assembly-pan.ts'

/** What is counted: level measures, tongs, pieces, cups. */
export const unitOf = (words: AssemblyWords, tool: TakePan['tool'], count: number): string => {
  switch (tool.tool) {
    case 'scoop':
    case 'ladle':
    case 'spoodle':
    case 'measure':
      return words.level
    case 'bottle':
      return words.squeeze(count)
    case 'tongs':
      return words.tongs(count)
    case 'piece':
    case 'tongs-pieces':
      return words.piece(count)
    case 'cup':
      return words.cup(count)
  }
}

/** A tool that stands in, in one short word. */
export const toolName = (words: AssemblyWords, tool: VolumeTool): string => {
  switch (tool.tool) {
    case 'scoop':
      return words.scoop(tool.number)
    case 'ladle':
    case 'spoodle':
      return `${words.sayFluidOunces(mlFrom(tool.flOz, 'flOz'))} ${words[tool.tool]}`
    case 'measure':
      return words.measureSize(tool.size, tool.unit)
  }
}

/** What is said of a tool on two lines; nothing of pieces taken by hand. */
const linesOf = (words: AssemblyWords, { tool }: TakePan): readonly string[] => {
  switch (tool.tool) {
    case 'tongs':
      return [words.about, words.sayWeight(tool.grams * 1000)]
    case 'cup':
      return [words.lidded, words.sayFluidOunces(mlFrom(tool.flOz, 'flOz'))]
    case 'ladle':
    case 'spoodle':
      return [words[tool.tool], words.sayFluidOunces(mlFrom(tool.flOz, 'flOz'))]
    case 'measure':
      return [words.measure, words.measureSize(tool.size, tool.unit)]
    case 'bottle':
      return [words.bottle]
    case 'tongs-pieces':
      return [words.withTongs]
    case 'scoop':
    case 'piece':
      return []
  }
}

/** What to take it with, or how long it is warmed first. */
export function Tool({ pan }: { readonly pan: TakePan }) {
  const words = useAssemblyWords()
  if (pan.warm)
    return (
      <span>
        <b>{words.warm}</b>
        <span className={styles.under}>{words.seconds(pan.warm.seconds)}</span>
      </span>
    )
  if (pan.tool.tool === 'scoop')
    return <ScoopSign number={pan.tool.number} plain={pan.plainHandle} />
  return (
    <span className={styles.small}>
      {linesOf(words, pan).map((line) => (
        <span key={line} className={styles.under}>
          {line}
        </span>
      ))}
    </span>
  )
}
