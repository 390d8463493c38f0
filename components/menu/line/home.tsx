import styles from '#components/menu/menu.module.css'
import { MissingLists } from '#components/menu/publish/missing-lists.tsx'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { rowsOf } from '#lib/editor/draft.ts'

/** What to do next while no pan is chosen: put one in, or what is missing. */
export function Home() {
  const words = useMenuWords()
  const { draft, go, problems, published, changed } = useMenu()
  const hasPans = rowsOf(draft, 'pan').length > 0
  // What services open on, unless the line as it is drawn here is another.
  const of = published === null || changed ? '&of=draft' : ''
  const hasItems = rowsOf(draft, 'item').length > 0
  return (
    <>
      <p>{hasPans ? words.screen.tapPan : words.screen.tapBare}</p>
      <MissingLists />
      {hasPans && (
        <div className={styles.acts}>
          {!hasItems ? (
            <Button kind="main" onClick={() => go('items')}>
              {words.screen.toItems}
            </Button>
          ) : (
            <Button kind={problems.length === 0 ? 'main' : 'plain'} onClick={() => go('publish')}>
              {words.screen.sections.publish}
            </Button>
          )}
          <a className={styles.paper} href={`/paper/set-up?station=${draft.station}${of}`}>
            {words.screen.onPaper}
          </a>
        </div>
      )}
    </>
  )
}
