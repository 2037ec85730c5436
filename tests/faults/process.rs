//! The two programs as real processes that are killed with SIGKILL and started again, or stopped.

use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// The program, as the suite built it.
pub(crate) fn program() -> PathBuf {
    std::env::var_os("COILSIDE_BIN").map(PathBuf::from).expect("COILSIDE_BIN names the program; tests/run sets it")
}

/// A process of the program.
pub(crate) struct Process {
    arguments: Vec<String>,
    child: Option<Child>,
    /// How often it was started.
    pub(crate) starts: u32,
}

impl Process {
    /// One that is not started yet.
    pub(crate) fn new(arguments: &[&str]) -> Process {
        Process { arguments: arguments.iter().map(|text| (*text).to_owned()).collect(), child: None, starts: 0 }
    }

    /// Starts it and waits until it has printed a line with an address; returns the address.
    pub(crate) fn start(&mut self) -> String {
        self.kill();
        let mut child = Command::new(program())
            .args(&self.arguments)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::inherit())
            .spawn()
            .expect("the program starts");
        let mut lines = BufReader::new(child.stdout.take().expect("its output is piped")).lines();
        let address = lines
            .by_ref()
            .map_while(Result::ok)
            .find_map(|line| line.split_whitespace().find(|word| word.starts_with("http://")).map(str::to_owned))
            .expect("the program prints its address");
        // What it prints later must not fill the pipe.
        std::thread::spawn(move || lines.for_each(drop));
        self.child = Some(child);
        self.starts += 1;
        address
    }

    /// SIGINT, as Ctrl-C sends it: it may tidy up.
    pub(crate) fn interrupt(&self) {
        let pid = self.child.as_ref().expect("it runs").id().to_string();
        assert!(Command::new("kill").args(["-INT", &pid]).status().expect("kill runs").success());
    }

    /// Waits for its end, and tells whether it was a good one.
    pub(crate) fn ends_well(&mut self, patience: Duration) -> bool {
        let mut child = self.child.take().expect("it runs");
        let until = Instant::now() + patience;
        while Instant::now() < until {
            if let Some(status) = child.try_wait().expect("it can be waited for") {
                return status.success();
            }
            std::thread::sleep(Duration::from_millis(20));
        }
        self.child = Some(child);
        false
    }

    /// SIGKILL: no time to tidy up anything.
    pub(crate) fn kill(&mut self) {
        if let Some(mut child) = self.child.take() {
            child.kill().expect("it can be killed");
            child.wait().expect("it ends");
        }
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        self.kill();
    }
}

/// Runs the program to its end and returns what it printed.
pub(crate) fn output(arguments: &[&str]) -> String {
    let output = Command::new(program()).args(arguments).output().expect("the program runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).trim().to_owned()
}

/// A port that is free now.
pub(crate) fn free_port() -> u16 {
    std::net::TcpListener::bind("127.0.0.1:0").and_then(|at| at.local_addr()).expect("there is a free port").port()
}

/// A path as an argument.
pub(crate) fn text(path: &Path) -> &str {
    path.to_str().expect("the path is plain")
}
