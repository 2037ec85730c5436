//! What is known: a value for each fact, or none. Small and copied, since the pack checker holds many of them.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::fact::{Fact, Value};

const COUNT: usize = Fact::ALL.len();

/// What is known. A fact that is absent is not known. Written as a map from facts to values, in the canon's order.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Facts([Option<Value>; COUNT]);

impl Facts {
    /// Nothing is known.
    #[must_use]
    pub const fn new() -> Facts {
        Facts([None; COUNT])
    }

    /// The fact's value, where it is known.
    #[must_use]
    pub fn get(&self, fact: &Fact) -> Option<&Value> {
        self.0.get(*fact as usize).and_then(Option::as_ref)
    }

    /// Is the fact known?
    #[must_use]
    pub fn contains_key(&self, fact: &Fact) -> bool {
        self.get(fact).is_some()
    }

    /// From now on the fact has this value. What it was before.
    pub fn insert(&mut self, fact: Fact, value: Value) -> Option<Value> {
        self.0.get_mut(fact as usize).and_then(|place| place.replace(value))
    }

    /// From now on the fact is not known. What it was before.
    pub fn remove(&mut self, fact: &Fact) -> Option<Value> {
        self.0.get_mut(*fact as usize).and_then(Option::take)
    }

    /// Only facts of which this is true stay known.
    pub fn retain(&mut self, keep: impl Fn(&Fact, &Value) -> bool) {
        for (fact, place) in Fact::ALL.iter().zip(&mut self.0) {
            if place.as_ref().is_some_and(|value| !keep(fact, value)) {
                *place = None;
            }
        }
    }

    /// Every known fact with its value, in the canon's order.
    pub fn iter(&self) -> impl Iterator<Item = (&Fact, &Value)> {
        Fact::ALL.iter().zip(&self.0).filter_map(|(fact, value)| Some((fact, value.as_ref()?)))
    }

    /// Every known fact, in the canon's order.
    pub fn keys(&self) -> impl Iterator<Item = &Fact> {
        self.iter().map(|(fact, _)| fact)
    }

    /// How many facts are known.
    #[must_use]
    pub fn len(&self) -> usize {
        self.iter().count()
    }

    /// Is nothing known?
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }
}

impl Default for Facts {
    fn default() -> Self {
        Facts::new()
    }
}

impl fmt::Debug for Facts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_map().entries(self.iter()).finish()
    }
}

impl Extend<(Fact, Value)> for Facts {
    fn extend<I: IntoIterator<Item = (Fact, Value)>>(&mut self, more: I) {
        for (fact, value) in more {
            self.insert(fact, value);
        }
    }
}

impl FromIterator<(Fact, Value)> for Facts {
    fn from_iter<I: IntoIterator<Item = (Fact, Value)>>(pairs: I) -> Self {
        let mut facts = Facts::new();
        facts.extend(pairs);
        facts
    }
}

impl IntoIterator for Facts {
    type Item = (Fact, Value);
    type IntoIter = std::vec::IntoIter<(Fact, Value)>;
    fn into_iter(self) -> Self::IntoIter {
        self.iter().map(|(fact, value)| (*fact, *value)).collect::<Vec<_>>().into_iter()
    }
}

impl Serialize for Facts {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.iter())
    }
}

impl<'de> Deserialize<'de> for Facts {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(BTreeMap::<Fact, Value>::deserialize(deserializer)?.into_iter().collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn facts_are_written_as_a_map_in_the_order_of_the_canon() {
        let facts: Facts = [(Fact::Loop, Value::Water), (Fact::Supply, Value::ProvedDead)].into_iter().collect();
        let text = serde_json::to_string(&facts).unwrap();
        assert_eq!(text, r#"{"supply":"proved-dead","loop":"water"}"#);
        assert_eq!(serde_json::from_str::<Facts>(&text).unwrap(), facts);
        assert!(serde_json::from_str::<Facts>(r#"{"tea":"hot"}"#).is_err());
    }

    #[test]
    fn a_fact_stands_at_the_place_of_its_number() {
        for (at, &fact) in Fact::ALL.iter().enumerate() {
            let mut facts = Facts::new();
            facts.insert(fact, Value::On);
            assert_eq!((fact as usize, facts.keys().collect::<Vec<_>>()), (at, vec![&fact]));
        }
    }
}
