/**
 * Starts OpenTelemetry. Loaded by instrumentation.ts only where the settings ask for it, since it is large. Where to and how
 * often is said by OpenTelemetry's own environment variables; it speaks OTLP over HTTP with protobuf.
 */
import { metrics as figures } from '@opentelemetry/api';
import { OTLPTraceExporter } from '@opentelemetry/exporter-trace-otlp-proto';
import { NodeSDK, resources, tracing } from '@opentelemetry/sdk-node';
import { deliveriesWaiting } from '../db/job-queue';
import { log } from '../log';
import { whenClosing } from '../shutdown';
import { cleaning } from './cleaned';
import { forgetFigures } from './spans';

export interface Telemetry {
  /** Sends what is still here and ends. */
  stop(): Promise<void>;
}

/** Starts; what is left is sent when the server ends. Trouble with the receiver never reaches a request. */
export function startTelemetry(): Telemetry {
  const without = process.env['OTEL_TRACES_EXPORTER']?.trim() === 'none';
  const sdk = new NodeSDK({
    serviceName: process.env['OTEL_SERVICE_NAME']?.trim() || 'wheelchock',
    // Not what the machine would tell of itself: its account, its folder, its command line.
    resourceDetectors: [resources.envDetector],
    spanProcessors: without ? [] : [new tracing.BatchSpanProcessor(cleaning(new OTLPTraceExporter()))],
    // Logs go to standard output and nowhere else.
    logRecordProcessors: [],
    instrumentations: [],
  });
  sdk.start();
  forgetFigures();
  watchDeliveries();
  const stop = () => sdk.shutdown().catch((error: unknown) => log.error('telemetry', error));
  whenClosing(stop);
  return { stop };
}

/** How many messages to other programs wait, asked of the queue each time the figures are sent. */
function watchDeliveries(): void {
  figures
    .getMeter('wheelchock')
    .createObservableGauge('wheelchock.deliveries.waiting', {
      description: 'Messages to other programs not sent yet',
    })
    .addCallback(async (result) => {
      try {
        result.observe(await deliveriesWaiting());
      } catch (error) {
        log.warn('telemetry', { about: 'deliveries' }, error);
      }
    });
}
