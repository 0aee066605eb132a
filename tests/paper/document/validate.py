"""Validates documents by a schema: validate.py SCHEMA DOCUMENT...; one line each."""
import json
import sys

import jsonschema

with open(sys.argv[1], encoding="utf-8") as file:
    schema = json.load(file)
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
for path in sys.argv[2:]:
    with open(path, encoding="utf-8") as file:
        document = json.load(file)
    error = next(validator.iter_errors(document), None)
    print("sound" if error is None else "spoiled: " + error.message.replace("\n", " ")[:200])
