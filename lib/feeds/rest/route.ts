import { type z } from 'zod';
import { type ActorRef } from '../../access/actor';
import { type CallOptions } from '../../access/service';
import { type Problem, type Result } from '../../problems';
import { type Scope } from '../scopes';

interface Common {
  readonly method: 'GET' | 'POST';
  /** Below /api/v1, with the parts that vary in braces. */
  readonly path: string;
  /** Its name for programs that are made from the document. */
  readonly name: string;
  readonly summary: string;
  readonly scope: Scope;
  /** Parts of the path and of the query, all of them text. */
  readonly input: z.ZodObject;
  /** What is sent; its `requestId` comes from the Idempotency-Key header. */
  readonly body?: z.ZodObject;
}

/** A route that answers with JSON. */
export interface JsonRoute extends Common {
  readonly output: z.ZodObject;
  readonly status: 200 | 201;
  run(ref: ActorRef, input: never, options: CallOptions): Promise<Result<unknown>>;
}

/** A route that answers with a file. */
export interface FileRoute extends Common {
  readonly types: readonly string[];
  file(
    ref: ActorRef,
    input: never,
    options: CallOptions,
    refused: (problem: Problem) => Response,
  ): Promise<Response>;
}

export type Route = JsonRoute | FileRoute;

export const isFile = (route: Route): route is FileRoute => 'file' in route;
