"""Checks JSON documents against a schema: validate_json.py SCHEMA DOCUMENTS, the second a JSON array.

Prints what is wrong, a line each. Exit 0 if nothing is, 1 if something is, 77 if the validator is not installed.
"""

import json
import sys

try:
    import jsonschema
except ImportError:
    print("python3-jsonschema is not installed")
    sys.exit(77)

schema = json.load(open(sys.argv[1], encoding="utf-8"))
documents = json.load(open(sys.argv[2], encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
wrong = [
    f"{number}: {error.json_path}: {error.message}"
    for number, document in enumerate(documents)
    for error in validator.iter_errors(document)
]
print("\n".join(wrong))
sys.exit(1 if wrong else 0)
