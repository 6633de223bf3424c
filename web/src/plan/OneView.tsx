import { Link } from 'wouter';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';

/** What one photo cannot know, and the way to know it. */
export function OneView({ plantId }: { plantId: string }) {
  return (
    <>
      <p>
        One photo knows left and right only, not front and back. With the pot turned between four shots from
        the same place, Rondure draws the plant from above and says which side needs the light.
      </p>
      <div className={buttons.row}>
        <Link href={`/plants/${plantId}/turned`} className={buttons.quiet}>
          <Icon name="turn" /> Photograph it from all round
        </Link>
      </div>
    </>
  );
}
