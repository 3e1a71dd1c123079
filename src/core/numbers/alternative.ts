// Which departures from chance a test counts against it.
export type Alternative = 'greater' | 'less' | 'two-sided';
