//! The shape as a JSON Schema (draft 2020-12), for the editors in which packs are written.

use serde_json::{Map, Value, json};

use super::{EVERY, Field, Kind, PACK, Shape, every_holds};
use crate::visit::fact::Fact;

/// The schema, as text that ends in a line feed. It tells what each table may hold; what hangs together across tables
/// (names, words, dangers) only the reader and the checker know.
#[must_use]
pub fn schema() -> String {
    let mut whole = Map::new();
    whole.insert("$schema".into(), json!("https://json-schema.org/draft/2020-12/schema"));
    whole.insert("title".into(), json!("A procedure pack, format 1"));
    for (name, value) in table(&PACK) {
        whole.insert(name, value);
    }
    let mut shared = Map::new();
    shared.insert("name".into(), json!({ "type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$" }));
    shared.insert("decimal".into(), json!({ "type": "string", "pattern": "^-?[0-9]{1,12}(\\.[0-9]{1,12})?$" }));
    shared.insert("holds".into(), json!({ "enum": every_holds() }));
    let facts: Vec<_> = Fact::ALL.iter().map(|fact| fact.name()).collect();
    shared.insert("fact".into(), json!({ "enum": facts }));
    for shape in EVERY.iter().filter(|shape| shape.name != PACK.name) {
        shared.insert(shape.name.to_owned(), Value::Object(table(shape)));
    }
    whole.insert("$defs".into(), Value::Object(shared));
    let text = serde_json::to_string_pretty(&Value::Object(whole)).unwrap_or_default();
    format!("{text}\n")
}

fn table(shape: &Shape) -> Map<String, Value> {
    let mut properties = Map::new();
    for field in shape.fields {
        properties.insert(field.name.to_owned(), property(field));
    }
    let needed: Vec<_> = shape.fields.iter().filter(|field| field.needed).map(|field| field.name).collect();
    let mut map = Map::new();
    map.insert("type".into(), json!("object"));
    map.insert("description".into(), json!(shape.says));
    map.insert("additionalProperties".into(), json!(false));
    map.insert("required".into(), json!(needed));
    map.insert("properties".into(), Value::Object(properties));
    map
}

fn property(field: &Field) -> Value {
    let mut value = kind(&field.kind);
    if let Value::Object(map) = &mut value {
        map.insert("description".into(), json!(field.says));
    }
    value
}

fn kind(kind_of: &Kind) -> Value {
    let shared = |name: &str| json!({ "$ref": format!("#/$defs/{name}") });
    match kind_of {
        Kind::Name | Kind::NameOf(_) => shared("name"),
        Kind::Version => json!({ "type": "string", "pattern": "^[0-9]+\\.[0-9]+\\.[0-9]+$" }),
        Kind::Whole(least, most) => json!({ "type": "integer", "minimum": least, "maximum": most }),
        Kind::Flag => json!({ "type": "boolean" }),
        Kind::Decimal => shared("decimal"),
        Kind::Range => json!({ "type": "array", "items": shared("decimal"), "minItems": 2, "maxItems": 2 }),
        Kind::OneOf(words) => json!({ "enum": words }),
        Kind::Role(words) => json!({ "type": "string", "examples": words }),
        Kind::Holds => shared("holds"),
        Kind::Fact => shared("fact"),
        Kind::When => json!({ "type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*=[a-z0-9]+(-[a-z0-9]+)*$" }),
        Kind::List(of) => json!({ "type": "array", "items": kind(of) }),
        Kind::Table(shape) => shared(shape.name),
        Kind::Tables(shape, least) => json!({ "type": "array", "items": shared(shape.name), "minItems": least }),
    }
}
