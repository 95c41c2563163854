import { lambdaHandler } from '../http/lambda.ts';
import { wired } from '../wiring.ts';
import { createRecordsApp } from './app.ts';

export const handler = lambdaHandler(() => createRecordsApp(wired()));
