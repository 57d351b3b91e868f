import { computed, signal } from '@preact/signals';

/** The event with which some browsers let a page open the install prompt once. */
interface InstallPrompt extends Event {
  prompt(): Promise<{ readonly outcome: 'accepted' | 'dismissed' }>;
}

const offered = signal<InstallPrompt | null>(null);
addEventListener('beforeinstallprompt', (event) => {
  // The browser's own banner would cover the work; the page shows the offer itself.
  event.preventDefault();
  offered.value = event as InstallPrompt;
});

/** Matches when running as an installed app. */
const standalone = matchMedia('(display-mode: standalone)');
const isInstalled = signal(standalone.matches || fromHomeScreen() === true);
standalone.addEventListener('change', ({ matches }) => {
  isInstalled.value ||= matches;
});
addEventListener('appinstalled', () => {
  isInstalled.value = true;
  offered.value = null;
});

/**
 * Safari on iOS and iPadOS: whether the page was opened from the home screen; undefined elsewhere.
 */
function fromHomeScreen(): boolean | undefined {
  return (navigator as Navigator & { readonly standalone?: boolean }).standalone;
}

/**
 * How Kingcup can be installed here: through the browser's prompt; by the painter through the share
 * menu, which creates a separate book; or null when no way is known.
 */
export const installWay = computed((): 'asks' | 'by hand' | null => {
  if (isInstalled.value) return null;
  if (offered.value) return 'asks';
  return fromHomeScreen() === false ? 'by hand' : null;
});

/** Opens the browser's install prompt. */
export async function install(): Promise<void> {
  const prompt = offered.value;
  offered.value = null;
  await prompt?.prompt();
}
