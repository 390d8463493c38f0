import styles from '#components/menu/label/tiles.module.css'
import { VesselSign } from '#components/menu/label/vessel-sign.tsx'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import type { Declaration } from '#lib/station/station-document.ts'

const WORDS: readonly Declaration[] = ['contains', 'may-contain', 'free', 'not-listed', 'unknown']

interface WordRowProps {
  readonly taken: Declaration | null
  readonly onTake: (word: Declaration) => void
}

/** The five words of a label; one is taken and stays so until another is. */
export function WordRow({ taken, onTake }: WordRowProps) {
  const words = useLabelFormWords()
  return (
    <fieldset className={styles.words}>
      <legend>{words.take}</legend>
      {WORDS.map((word) => (
        <button key={word} type="button" aria-pressed={taken === word} onClick={() => onTake(word)}>
          <VesselSign word={word} />
          <b>{words.word[word]}</b>
          <span>{words.wordWhy[word]}</span>
        </button>
      ))}
    </fieldset>
  )
}
