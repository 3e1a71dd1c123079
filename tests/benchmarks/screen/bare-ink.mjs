// The least that Ink draws: one line.
import { render, Text } from 'ink';
import { createElement } from 'react';

process.env.NODE_ENV ??= 'production';
render(createElement(Text, null, 'ready'));
setInterval(() => undefined, 1000);
