import { configure } from '@testing-library/preact';

/** A busy machine is waited for: as long as the browser tests wait. */
configure({ asyncUtilTimeout: 20_000 });
