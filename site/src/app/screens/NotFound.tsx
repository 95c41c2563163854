import { useWords } from '../core/words.ts';
import { Heading } from './Heading.tsx';

export function NotFound() {
  const words = useWords();
  return (
    <>
      <Heading title={words.t('screen.not-found')}>{words.t('screen.not-found')}</Heading>
      <p>{words.t('screen.not-found-more')}</p>
      <p>
        <a class="button" href="#/">
          {words.t('screen.home')}
        </a>
      </p>
    </>
  );
}
