// The least that reads a serial port line by line and prints what came.
import { ReadlineParser } from '@serialport/parser-readline';
import { SerialPort } from 'serialport';

const port = new SerialPort({ path: process.argv[2], baudRate: 9600 });
port.pipe(new ReadlineParser({ delimiter: '\r\n' })).on('data', (line) => {
  // biome-ignore lint/suspicious/noConsole: the usual way to print is what is measured
  console.log(line);
});
