import styles from '#components/plan/papers.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'

/** The papers of a plan: by a name of its words, where each is. */
const PAPERS = [
  { id: 'purchase', path: '/paper/purchase' },
  { id: 'prep', path: '/paper/prep' },
  { id: 'pack', path: '/paper/pack' },
  { id: 'setUp', path: '/paper/set-up' },
  { id: 'readings', path: '/paper/readings' },
  { id: 'labels', path: '/paper/labels' },
  { id: 'allergens', path: '/paper/allergens' },
] as const

/** All that a plan is printed on, one below another: what it is, and what it is for. */
export function Papers({ onBack }: { readonly onBack: () => void }) {
  const { papers: words } = usePlanWords()
  return (
    <nav className={styles.papers} aria-label={words.title}>
      <h1>{words.title}</h1>
      <ul>
        {PAPERS.map(({ id, path }) => (
          <li key={id}>
            <a href={`${path}${location.search}`}>
              <b>{words.of[id].name}</b>
              <span>{words.of[id].what}</span>
            </a>
          </li>
        ))}
      </ul>
      <Button onClick={onBack}>{words.back}</Button>
    </nav>
  )
}
