/** What `joggle --help` prints. */
export const helpText = `joggle: from tape readings to parts that fit

  joggle plan PROJECT.json [-o FOLDER]   shapes, parts, cutting plans, drawings and lists,
                                         written into FOLDER (joggle-out)
  joggle measure READINGS.json|.csv      the shape that fits the readings best, and which
                                         reading to doubt
  joggle cut JOB.json                    rectangles (or lengths) from stock, with the lower
                                         bound of the cost
  joggle nest JOB.json                   true shapes on sheets, or on the shortest strip, for the
                                         router
  joggle check FILE [--job JOB.json]     what is wrong with one of our files; a plan of cut or
                                         nest is checked against its job
  joggle trace DRAWING.dxf|.svg          the closed contours of a drawing; with --into PROJECT.json
                                         the project with one of them as a shape (--contour N,
                                         --layer, --name, --seen-from, --unit mm|cm|m|in|ft)
  joggle open [--port N]                 serves the app from this computer and says where

Options
  --json         one JSON document on standard output, all else on standard error
  --seconds N    time for the whole run (plan: 6, cut and nest: 10)
  --work N       steps of search instead of time: the same answer on every machine
  --seed N       another start for the search (1)
  --workers N    1 or 2 threads for the search (2 where there are two cores, and with --work)
  --help, --version

FILE may be - for standard input. Lengths are in mm, angles in degrees.
Exit code 0: done. 1: something must not be cut as it stands. 2: wrong use, or a file that cannot be read.
`;
