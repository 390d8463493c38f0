import styles from '#components/pick-up/pick-up.module.css'
import { usePickUpWords } from '#components/pick-up/words.tsx'
import type { PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import { standingIn } from '#lib/rooms/shelf/views/pick-up-places.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** Numbers whose guests are asked to the counter, above the path; why is told nobody else. */
export function Called({ picture }: { readonly picture: PickUpPicture }) {
  const words = usePickUpWords()
  const { tiles, more } = standingIn(picture, 'called')
  const names = tiles.flatMap(({ builds }) => builds.map(({ name }) => name))
  if (names.length === 0) return null
  return (
    <section
      className={styles.called}
      data-place="called"
      aria-label={words.place.called}
      aria-live="polite"
    >
      <p>{words.place.called}</p>
      <ol>
        {names.map((name) => (
          <li key={name} data-build={name}>
            {sayBuild(name)}
          </li>
        ))}
        {more > 0 && <li>{words.more(more)}</li>}
      </ol>
    </section>
  )
}
