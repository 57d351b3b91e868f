import { computed, signal } from '@preact/signals';

/** What some browsers hand a page so that it may ask, once, to be installed. */
interface InstallPrompt extends Event {
  prompt(): Promise<{ readonly outcome: 'accepted' | 'dismissed' }>;
}

const offered = signal<InstallPrompt | null>(null);
addEventListener('beforeinstallprompt', (event) => {
  // The browser's own strip would cover the work; the offer stands on the page instead.
  event.preventDefault();
  offered.value = event as InstallPrompt;
});

/** Runs as an app of its own already. */
const standalone = matchMedia('(display-mode: standalone)');
const isInstalled = signal(standalone.matches || fromHomeScreen() === true);
standalone.addEventListener('change', ({ matches }) => {
  isInstalled.value ||= matches;
});
addEventListener('appinstalled', () => {
  isInstalled.value = true;
  offered.value = null;
});

/** Some telephones and tablets tell a page whether it was opened from the home screen; others know no such word. */
function fromHomeScreen(): boolean | undefined {
  return (navigator as Navigator & { readonly standalone?: boolean }).standalone;
}

/**
 * How Kingcup can be put on this device: the browser asks; the painter does it through the share menu,
 * which makes a book of its own; or no way is known.
 */
export const installWay = computed((): 'asks' | 'by hand' | null => {
  if (isInstalled.value) return null;
  if (offered.value) return 'asks';
  return fromHomeScreen() === false ? 'by hand' : null;
});

/** Lets the browser ask the painter. */
export async function install(): Promise<void> {
  const prompt = offered.value;
  offered.value = null;
  await prompt?.prompt();
}
