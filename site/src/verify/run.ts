import '../app/core/noEval.ts';
import { getDocument, GlobalWorkerOptions } from 'pdfjs-dist/legacy/build/pdf.mjs';
import workerAddress from 'pdfjs-dist/legacy/build/pdf.worker.min.mjs?url';
import { pageTextReader } from '../../../shared/verify/file/pageText.ts';
import { verifyPacket, type Verification, type VerifyQuestion } from '../../../shared/verify/verify.ts';

/** Everything heavy, loaded when the first packet is handed in. */
GlobalWorkerOptions.workerSrc = workerAddress;

export const verify = (question: VerifyQuestion): Promise<Verification> =>
  verifyPacket(question, pageTextReader({ getDocument }));
