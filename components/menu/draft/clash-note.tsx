import styles from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { changesBetween } from '#lib/editor/changes-between.ts'
import { keyOf } from '#lib/editor/draft.ts'

/** That somebody else changed the same meanwhile, and which of both holds; what can't be taken. */
export function ClashNote() {
  const words = useMenuWords()
  const { draft, theirs, clash, refused, keepMine, takeTheirs } = useMenu()
  if (refused?.code === 'step-refused')
    return (
      <Note kind="no" role="alert">
        {words.refusedStep(draft, refused)}
      </Note>
    )
  if (clash === null) return null
  const otherwise = changesBetween(theirs, draft).filter(({ entity, id }) =>
    clash.keys.includes(keyOf(entity, id)),
  )
  return (
    <Note kind="watch" role="alert">
      {words.screen.clash(clash.keys.map((key) => words.rowName(draft, key)))}{' '}
      {words.screen.clashWhat}{' '}
      {otherwise.map((one) => (
        <span
          key={`${one.what} ${one.entity} ${one.id} ${one.what === 'changed' ? one.field : ''}`}
          className={styles.otherwise}
        >
          {words.clash(one)}
        </span>
      ))}
      <span className={styles.two}>
        <Button onClick={keepMine}>{words.screen.mine}</Button>
        <Button onClick={takeTheirs}>{words.screen.theirs}</Button>
      </span>
    </Note>
  )
}
