import styles from '#components/sheet/word-sign.module.css'
import { useSheetWords } from '#components/sheet/words.tsx'
import type { SheetWord } from '#lib/rooms/care/views/allergen-sheet.ts'

/** Shapes as well as letters, so that the sheet reads without colour and printed in black. */
const SHAPES: Readonly<Record<SheetWord, string>> = {
  contains: 'M2 2H30V30H2Z',
  unknown: 'M3 3H29V29H3Z',
  'may-contain': 'M16 1L31 16L16 31L1 16Z',
  shared: 'M16 2A14 14 0 1 1 15.99 2Z',
  'not-listed': 'M2 16A14 14 0 0 1 30 16V30H2Z',
  free: '',
}

export function WordSign({ word }: { readonly word: SheetWord }) {
  const words = useSheetWords()
  return (
    <svg className={styles.sign} data-word={word} viewBox="0 0 32 32" aria-hidden="true">
      {SHAPES[word] !== '' && <path d={SHAPES[word]} />}
      <text x="16" y="22.5" textAnchor="middle">
        {words.letter[word]}
      </text>
    </svg>
  )
}
