import { useState } from 'react'
import styles from '#components/larder/larder.module.css'
import { useLarderWords } from '#components/larder/larder-words.tsx'
import { isHatched } from '#components/larder/lot-said.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import type { LotShown } from '#lib/larder/shelf-view.ts'

interface TookItProps {
  readonly lot: LotShown
  readonly onTook: () => void
}

/** Another class has it: one tap, but where something of it is open that class is told what, and it is said. */
export function TookIt({ lot, onTook }: TookItProps) {
  const words = useLarderWords()
  const [isAsked, setAsked] = useState(false)
  if (!isHatched(lot))
    return (
      <Button kind="quiet" onClick={onTook}>
        {words.tookIt}
      </Button>
    )
  if (!isAsked)
    return (
      <Button kind="quiet" sub={words.tookItOpen} onClick={() => setAsked(true)}>
        {words.tookIt}
      </Button>
    )
  return (
    <div className={styles.took}>
      <Note kind="watch" role="status">
        {words.tellThem}{' '}
        {[
          ...lot.relabelled.map(({ name, is }) => words.label.isOpen(name, is)),
          ...(lot.barred === null
            ? []
            : [
                words.sayLotProblem(
                  lot.barred,
                  (at) =>
                    words.dayAndTime(
                      words.sayDay(at, lot.timeZone),
                      words.sayTime(at, lot.timeZone),
                    ),
                  (id) => id,
                  words.sayMuch,
                ),
              ]),
        ].join(' ')}
      </Note>
      <Button onClick={onTook}>{words.toldThem}</Button>
    </div>
  )
}
