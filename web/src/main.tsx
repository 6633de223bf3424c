import '@fontsource-variable/commissioner/wght.css';
import '@fontsource-variable/piazzolla/wght.css';
import './style/tokens.css';
import './style/base.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { queryClient } from './api/queries.ts';
import { speakReadersLanguage } from './languages/reader.ts';
import { followShade } from './parts/shade.ts';

followShade();

const place = document.getElementById('root');
if (!place) throw new TypeError('Expected an element #root in index.html but received null');

// Without the words the app still works, in English.
await speakReadersLanguage().catch(() => undefined);

createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
