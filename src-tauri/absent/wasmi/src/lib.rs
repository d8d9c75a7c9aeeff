//! Stands in for the library of that name, which runs WebAssembly: the typesetter's plugins.
//! Lapwork's sheets load none.
//!
//! It gives what the typesetter is compiled against. [`Module::new`] reads nothing and says that
//! plugins are not built in; what only follows from a module has no value, so that the compiler
//! knows it to be out of reach.

use std::fmt;
use std::marker::PhantomData;

/// Has no value.
#[derive(Debug, Clone, Copy)]
enum Never {}

/// Why nothing was done: plugins are not built in.
#[derive(Debug)]
pub struct Error(());

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plugins are not built in")
    }
}

/// What a machine may do: nothing.
#[derive(Debug, Default)]
pub struct Config(());

impl Config {
    /// Takes a wish that changes nothing.
    pub fn wasm_relaxed_simd(&mut self, _: bool) -> &mut Self {
        self
    }
}

/// A machine that runs nothing.
#[derive(Debug)]
pub struct Engine(());

impl Engine {
    /// A machine that runs nothing.
    pub fn new(_: &Config) -> Engine {
        Engine(())
    }
}

/// A program that was read: there is none.
#[derive(Debug)]
pub struct Module(Never);

impl Module {
    /// Reads a program.
    ///
    /// # Errors
    /// Always: plugins are not built in.
    pub fn new(_: &Engine, _: &[u8]) -> Result<Module, Error> {
        Err(Error(()))
    }

    /// What a program offers by a name.
    pub fn get_export(&self, _: &str) -> Option<ExternType> {
        match self.0 {}
    }

    /// All that a program offers.
    pub fn exports(&self) -> std::iter::Empty<ExportType> {
        match self.0 {}
    }
}

/// What a program offers, with its name.
#[derive(Debug)]
pub struct ExportType(Never);

impl ExportType {
    /// Its name.
    pub fn name(&self) -> &str {
        match self.0 {}
    }

    /// Its type.
    pub fn ty(&self) -> ExternType {
        match self.0 {}
    }
}

/// The type of what a program offers.
#[derive(Debug)]
pub enum ExternType {
    /// A function.
    Func(FuncType),
    /// A memory.
    Memory(Memory),
}

/// The type of a function.
#[derive(Debug)]
pub struct FuncType(Never);

impl FuncType {
    /// What it takes.
    pub fn params(&self) -> &[ValType] {
        match self.0 {}
    }

    /// What it gives.
    pub fn results(&self) -> &[ValType] {
        match self.0 {}
    }
}

/// The type of a value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ValType {
    /// Thirty-two bits.
    I32,
    /// Any other.
    Other,
}

/// A value.
#[derive(Debug, Clone)]
pub enum Val {
    /// Thirty-two bits.
    I32(i32),
}

/// What a program is joined to.
#[derive(Debug)]
pub struct Linker<T> {
    engine: Engine,
    data: PhantomData<T>,
}

impl<T> Linker<T> {
    /// Joined to nothing.
    pub fn new(_: &Engine) -> Linker<T> {
        Linker {
            engine: Engine(()),
            data: PhantomData,
        }
    }

    /// The machine.
    pub fn engine(&self) -> &Engine {
        &self.engine
    }

    /// Offers a function to programs; as there are none, it is dropped.
    ///
    /// # Errors
    /// Never.
    pub fn func_wrap<F>(&mut self, _: &str, _: &str, _: F) -> Result<&mut Self, Error> {
        Ok(self)
    }

    /// Starts a program.
    ///
    /// # Errors
    /// Nobody can ask, as there is no program.
    pub fn instantiate_and_start(&self, _: &mut Store<T>, of: &Module) -> Result<Instance, Error> {
        match of.0 {}
    }
}

/// What running programs have in common.
#[derive(Debug)]
pub struct Store<T>(T);

impl<T> Store<T> {
    /// Holds the data.
    pub fn new(_: &Engine, data: T) -> Store<T> {
        Store(data)
    }

    /// The data.
    pub fn data_mut(&mut self) -> &mut T {
        &mut self.0
    }
}

/// A running program: there is none.
#[derive(Debug)]
pub struct Instance(Never);

impl Instance {
    /// What it offers by a name.
    pub fn get_export<S>(&self, _: S, _: &str) -> Option<Extern> {
        match self.0 {}
    }
}

/// What a running program offers.
#[derive(Debug)]
pub struct Extern(Never);

impl Extern {
    /// As a function.
    pub fn into_func(self) -> Option<Func> {
        match self.0 {}
    }

    /// As a memory.
    pub fn into_memory(self) -> Option<Memory> {
        match self.0 {}
    }
}

/// A function of a running program.
#[derive(Debug)]
pub struct Func(Never);

impl Func {
    /// Its type.
    pub fn ty<S>(&self, _: S) -> FuncType {
        match self.0 {}
    }

    /// Runs it.
    ///
    /// # Errors
    /// Nobody can ask, as there is no function.
    pub fn call<S>(&self, _: S, _: &[Val], _: &mut [Val]) -> Result<(), Error> {
        match self.0 {}
    }
}

/// The memory of a running program.
#[derive(Debug, Clone, Copy)]
pub struct Memory(Never);

impl Memory {
    /// How large it is.
    pub fn size<S>(&self, _: S) -> u64 {
        match self.0 {}
    }

    /// Makes it larger.
    ///
    /// # Errors
    /// Nobody can ask, as there is no memory.
    pub fn grow<S>(&self, _: S, _: u64) -> Result<u64, Error> {
        match self.0 {}
    }

    /// What is in it.
    pub fn data<T>(&self, _: &Store<T>) -> &[u8] {
        match self.0 {}
    }

    /// What is in it, to be changed.
    pub fn data_mut<'a, T>(&self, _: &'a mut Store<T>) -> &'a mut [u8] {
        match self.0 {}
    }

    /// Copies some of it.
    ///
    /// # Errors
    /// Nobody can ask, as there is no memory.
    pub fn read<S>(&self, _: S, _: usize, _: &mut [u8]) -> Result<(), Error> {
        match self.0 {}
    }

    /// Writes into it.
    ///
    /// # Errors
    /// Nobody can ask, as there is no memory.
    pub fn write<S>(&self, _: S, _: usize, _: &[u8]) -> Result<(), Error> {
        match self.0 {}
    }
}

/// The program that calls a function offered to it.
#[derive(Debug)]
pub struct Caller<'a, T>(Never, PhantomData<&'a mut T>);

impl<T> Caller<'_, T> {
    /// What it offers by a name.
    pub fn get_export(&self, _: &str) -> Option<Extern> {
        match self.0 {}
    }

    /// The data of its store.
    pub fn data_mut(&mut self) -> &mut T {
        match self.0 {}
    }
}
