import styles from '#components/menu/menu.module.css'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'

/** Before anything is known of a station: that it is looked for, or why it can't be seen here. */
export function NotIn({
  lost,
  onStations,
}: {
  readonly lost: string | null
  readonly onStations?: () => void
}) {
  const { screen: words } = useMenuWords()
  const isShut = lost === 'not-yours' || lost === 'not-joined'
  return (
    <main className={styles.page}>
      <header className={styles.top}>
        <h1>{words.title}</h1>
      </header>
      {lost === null ? (
        <p>{words.connecting}</p>
      ) : (
        <>
          <Note kind={isShut ? 'no' : 'watch'}>
            {lost === 'not-yours'
              ? words.notYours
              : lost === 'not-joined'
                ? words.notJoined
                : lost === 'no-such-station'
                  ? words.noSuch
                  : words.lost}
          </Note>
          <p className={styles.links}>
            {lost === 'not-joined' && <a href="/join#">{words.signOn}</a>}
            <a href="/">{words.toFirst}</a>
            {lost === 'no-such-station' && onStations && (
              <Button kind="quiet" onClick={onStations}>
                {words.toStations}
              </Button>
            )}
          </p>
        </>
      )}
    </main>
  )
}
