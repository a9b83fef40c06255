type Environment = Readonly<Record<string, string | undefined>>;

/** Any of these switches traces and figures on; they are OpenTelemetry's own (environment variable specification). */
const SWITCHES = [
  'OTEL_EXPORTER_OTLP_ENDPOINT',
  'OTEL_EXPORTER_OTLP_TRACES_ENDPOINT',
  'OTEL_EXPORTER_OTLP_METRICS_ENDPOINT',
] as const;

/** Whether traces or figures are asked for. Decides whether the library is loaded at all. */
export const telemetryWanted = (env: Environment = process.env): boolean =>
  env['OTEL_SDK_DISABLED']?.trim().toLowerCase() !== 'true' && SWITCHES.some((name) => env[name]?.trim());
